import { describe, expect, it } from 'vitest';
import { makeRecorder } from '../../base/trace.js';
import type { JointProduct, LateralSystem } from '../../project/model.js';
import { JOINT_KINDS } from '../../project/schema/words.js';
import { change, gableProject } from '../../structure/testing.js';
import type { Finding } from '../contract.js';
import { bar, contextFor, type Given, joint, NONE, pad, postBar, timber, VALUES, v } from '../testing.js';
import { jointDemands } from './demands.js';
import { JOINT_TRAITS } from './kinds.js';
import { assessProduct, jointProducts, openSides } from './products.js';
import { servedBy } from './serving.js';

/** Two pieces: 1600 down, 1000 up, 400 along, 200 across at CD 1.6. */
const tie = (given: Partial<JointProduct> = {}): JointProduct => ({
  serves: ['J1'],
  product: 'side plates',
  count: 2,
  down: 800,
  up: 500,
  along: 200,
  across: 100,
  duration: 1.6,
  species: 'Douglas Fir-Larch',
  G: 0.5,
  service: 'dry',
  concrete: undefined,
  source: 'report, Table 3',
  path: '/choices/joints/0',
  ...given,
});

const withRows = (...rows: readonly JointProduct[]) =>
  change(gableProject, { choices: { ...gableProject.choices, joints: rows } });

const structure = { members: [bar(), postBar()], joints: [joint()] };
const context = (row: JointProduct, g: Given = {}) => contextFor({ project: withRows(row), structure, ...g });

/** As if sway were worked out, unless `open` says otherwise. */
function assess(row: JointProduct, g: Given, open: readonly ('along' | 'across')[] = []): Finding {
  const ctx = context(row, g);
  return assessProduct(ctx, jointDemands(ctx)[0]!, row, open);
}
/** Cases D, S, W. */
const under = (d: ReturnType<typeof v>, s = NONE, w = NONE): Given => ({ joints: { J1: [d, s, w] } });

describe('a named product', () => {
  it('is lowered for a longer load than its table is for', () => {
    // D: 600/(1600·0.9/1.6 = 900) = 0.6667. D+S: 1000/(1600·1.15/1.6 = 1150) = 0.8696 governs. D+0.6W: 600/1600.
    const f = assess(tie(), under(v(0, 0, -600), v(0, 0, -400)));
    expect(f).toMatchObject({ status: 'pass', combination: 'D+S', demand: 1000, unit: 'lb' });
    expect(f.capacity).toBeCloseTo(1150, 9);
    expect(f.ratio).toBeCloseTo(0.869565, 6);
  });

  it('is never raised for a shorter load', () => {
    // Table at CD 1.0; 0.6D+0.6W at 1.6 lifts 0.6·1400 − 0.6·0 = 840 on 1000, not 1600.
    const f = assess(tie({ duration: 1 }), under(NONE, NONE, v(0, 0, 1400)));
    expect(f.capacity).toBe(1000);
    expect(f.ratio).toBeCloseTo(0.84, 9);
  });

  it('adds directions that act together, vertical with both sideways', () => {
    // D+0.6W and 0.6D+0.6W: 300/1000 up + 120/400 along + 60/200 across = 0.9; the largest share is up or along, 0.3.
    const f = assess(tie(), under(NONE, NONE, v(200, -100, 500)));
    expect(f.status).toBe('pass');
    expect(f.ratio).toBeCloseTo(0.9, 9);
    const g = assess(tie(), under(NONE, NONE, v(300, -100, 500)));
    // + 60 lb along: 0.3 + 0.45 + 0.3 = 1.05, though each alone fits.
    expect(g.status).toBe('fail');
    expect(g.ratio).toBeCloseTo(1.05, 9);
    expect(g.note).toContain('too weak');
  });

  it('takes the worst joint of the mark, not the first', () => {
    const g = {
      structure: { ...structure, joints: [joint(), joint({ id: 'J1-02' })] },
      joints: { J1: [v(0, 0, -90), NONE, NONE], 'J1-02': [v(0, 0, -450), NONE, NONE] },
    };
    // 450/900
    const f = assess(tie(), g);
    expect(f.ratio).toBeCloseTo(0.5, 9);
    expect(f.note).toContain('450 lb down');
  });

  it('fails in a direction without a rating and says which', () => {
    const f = assess(tie({ across: undefined }), under(NONE, NONE, v(0, 50, 0)));
    expect(f).toMatchObject({ status: 'fail', demand: 30, capacity: 0 });
    expect(f.note).toContain('no rating square to the house wall');
    expect(f.note).toContain('30 lb');
    expect(assess(tie({ up: undefined }), under(NONE, NONE, v(0, 0, 9))).note).toContain('no rating up');
    // Nothing asked of it there: no rating needed.
    expect(assess(tie({ across: undefined }), under(v(0, 0, -90))).status).toBe('pass');
  });

  it('leaves down, and only down, to wood bearing on wood', () => {
    const f = assess(tie({ down: undefined }), under(v(0, 0, -9000), NONE, v(0, 0, 15500)));
    // 0.6·(−9000) + 0.6·15500 = 3900 up on 1000 fails; down 9000 is not counted.
    expect(f.status).toBe('fail');
    expect(f.ratio).toBeCloseTo(3.9, 9);
    const calm = assess(tie({ down: undefined }), under(v(0, 0, -9000)));
    expect(calm).toMatchObject({ status: 'pass', ratio: 0 });
    expect(calm.note).toContain('wood bearing on wood');
    // Said also where another combination governs: 0.6·(−100) + 0.6·600 = 300 up on 1000.
    const lifted = assess(tie({ down: undefined }), under(v(0, 0, -100), NONE, v(0, 0, 600)));
    expect(lifted.ratio).toBeCloseTo(0.3, 9);
    expect(lifted.note).toContain('100 lb down by wood bearing on wood');
    // A hung joint has no contact.
    const hung = { ...structure, joints: [joint({ contact: { length: 0, width: 0 } })] };
    expect(assess(tie({ down: undefined }), { ...under(v(0, 0, -9000)), structure: hung }).status).toBe('fail');
  });

  it('does not let a post base off: its post stands on the product', () => {
    const base = joint({
      kind: 'post-to-footing',
      ties: [
        { part: 'P1', along: 0 },
        { part: 'F1', along: 0 },
      ],
    });
    const g = { ...under(v(0, 0, -900)), structure: { members: [postBar()], joints: [base], footings: [pad()] } };
    expect(assess(tie({ down: undefined, concrete: 2500 }), g).status).toBe('fail');
    // 900 on 900 fits exactly, on concrete of 2500 psi as the table.
    expect(assess(tie({ concrete: 2500 }), g)).toMatchObject({ status: 'pass', ratio: 1 });
    expect(assess(tie(), g)).toMatchObject({ status: 'not-evaluated' });
    expect(assess(tie({ concrete: 3000 }), g)).toMatchObject({ status: 'outside-scope' });
  });

  it('is raised to hand statics like the bearing', () => {
    const hand = [
      {
        about: 'B1 on P1',
        case: 'D',
        statics: 600,
        analysed: 400,
        unit: 'lb',
        reason: '',
        governs: 'statics' as const,
      },
    ];
    // 450·600/400 = 675 on 900
    expect(assess(tie(), { ...under(v(0, 0, -450)), effects: { hand } }).ratio).toBeCloseTo(0.75, 9);
  });
});

describe('a table that does not apply', () => {
  const light = under(v(0, 0, -90));
  const soft = bar({ section: timber({ species: 'Hem-Fir', values: { ...VALUES, G: 0.43 } }) });

  it('is for denser wood', () => {
    const g = { ...light, structure: { ...structure, members: [soft, postBar()] } };
    const f = assess(tie(), g);
    expect(f.status).toBe('outside-scope');
    expect(f.note).toContain('0.43');
    expect(assess(tie({ G: 0.43 }), g).status).toBe('pass');
  });

  it('is for dry wood', () => {
    const g = { ...light, structure: { ...structure, members: [bar({ section: timber({ wet: true }) }), postBar()] } };
    expect(assess(tie(), g).status).toBe('outside-scope');
    expect(assess(tie({ service: 'wet' }), g).status).toBe('pass');
  });

  it('says nothing of the wood in the existing house', () => {
    const house = joint({
      kind: 'ledger-to-house',
      ties: [
        { part: 'B1', along: 9 },
        { part: 'W1', along: 0 },
      ],
    });
    expect(assess(tie(), { ...light, structure: { ...structure, joints: [house] } }).status).toBe('not-evaluated');
  });

  it('is still shown to fail first when it is too weak', () =>
    expect(
      assess(tie(), { ...under(v(0, 0, -9000)), structure: { ...structure, members: [soft, postBar()] } }).status,
    ).toBe('fail'));
});

describe('sideways ratings in house axes', () => {
  const square = bar({ id: 'B2', end: { x: 0, y: 144, z: 100 } });
  const second = joint({ id: 'J1-02', ties: [{ part: 'B2', along: 9 }] });
  const both = { members: [bar(), square, postBar()], joints: [joint(), second] };

  it('use the lesser where joints lie both ways', () => {
    // 0.6·100 = 60 along on the lesser 200, not 400.
    const f = assess(tie(), {
      structure: both,
      joints: { J1: [NONE, NONE, v(100, 0, 0)], 'J1-02': [NONE, NONE, NONE] },
    });
    expect(f.ratio).toBeCloseTo(0.3, 9);
    expect(f.note).toContain('both ways');
  });

  it('mean nothing where a joint is turned', () => {
    const skew = bar({ end: { x: 100, y: 100, z: 100 } });
    const f = assess(tie(), { ...under(v(0, 0, -90)), structure: { ...structure, members: [skew, postBar()] } });
    expect(f.status).toBe('outside-scope');
  });
});

describe('what is not known', () => {
  it('does not pass without forces', () => {
    expect(assess(tie(), {}).status).toBe('not-evaluated');
    const g = {
      structure: { ...structure, joints: [joint(), joint({ id: 'J1-02' })] },
      joints: { J1: [v(0, 0, -90), NONE, NONE] },
    };
    expect(assess(tie(), g).status).toBe('not-evaluated');
  });

  it('does not pass while side load is missing, yet shows how it fits and fails', () => {
    const f = assess(tie(), under(v(0, 0, -450)), ['along', 'across']);
    expect(f).toMatchObject({ status: 'not-evaluated', demand: 450, capacity: 900, ratio: 0.5 });
    expect(f.note).toContain('Side load not included yet: along the house wall and square to the house wall');
    const weak = assess(tie(), under(v(0, 0, -9000)), ['along']);
    expect(weak.status).toBe('fail');
    expect(weak.note).toContain('Side load not included yet');
  });

  it('is complete in a direction as soon as a real system is named for it', () => {
    const named = (x: LateralSystem, y: LateralSystem) => {
      const project = change(gableProject, { cover: { ...gableProject.cover, lateral: { x, y } } });
      // What the model holds by a restraint has come down through the joints already.
      return openSides(contextFor({ project, effects: { sway: [{ roof: 'R1', force: [NONE, NONE, v(300, 0, 0)] }] } }));
    };
    expect(named('house', 'knee-braces')).toEqual([]);
    expect(named('fixed-posts', 'none')).toEqual(['across']);
    expect(named('unknown', 'house')).toEqual(['along']);
  });
});

describe('the check', () => {
  const row = (rows: readonly JointProduct[], id: string) => {
    const ctx = contextFor({ project: withRows(...rows), structure, ...under(v(0, 0, -450)) });
    return jointProducts.run({ id, path: '' }, ctx);
  };

  it('prefers the row of the mark to the row of the kind', () => {
    const kind = tie({ serves: ['beam-to-post'], product: 'cap' });
    const choices = withRows(kind, tie()).choices;
    expect(servedBy(choices, 'J1', 'beam-to-post')).toMatchObject({ product: { product: 'side plates' } });
    expect(servedBy(choices, 'J2', 'beam-to-post')).toMatchObject({ product: { product: 'cap' } });
    expect(servedBy(choices, 'J2', 'truss-to-beam')).toBeUndefined();
    expect(row([kind], 'J1').note).toContain('2 × cap');
    expect(row([tie({ serves: ['truss-to-beam'] })], 'J1').note).toContain('no product');
  });

  it('names a product without its joint', () => {
    const ctx = contextFor({ project: withRows(tie({ serves: ['J9'] })), structure, ...under(v(0, 0, -450)) });
    expect(jointProducts.subjects(ctx).map((s) => s.id)).toEqual(['J1', 'J9']);
    expect(row([tie({ serves: ['J9'] })], 'J9')).toMatchObject({ status: 'fail' });
  });

  it('ends its trace with the ratio only when the ratio is the answer', () => {
    const ctx = context(tie(), under(v(0, 0, -600), v(0, 0, -400)));
    const d = jointDemands(ctx)[0]!;
    const done = makeRecorder();
    const f = assessProduct(ctx, d, tie(), [], done);
    expect(done.lines.at(-1)).toMatchObject({ symbol: 'ratio', value: f.ratio });
    expect(done.lines).toContainEqual(expect.objectContaining({ symbol: 'k', value: 1.15 / 1.6 }));
    expect(done.lines).toContainEqual(expect.objectContaining({ symbol: 'Pd,allow', clause: 'report, Table 3' }));
    expect(done.lines).toContainEqual(expect.objectContaining({ symbol: 'sum', clause: 'common practice, no source' }));
    const held = makeRecorder();
    assessProduct(ctx, d, tie(), ['along'], held);
    expect(held.lines.at(-1)).toMatchObject({ symbol: 'sum' });
  });

  it('knows every kind that carries, as the file does', () => {
    const carrying = Object.entries(JOINT_TRAITS).flatMap(([kind, t]) => (t.carries ? [kind] : []));
    expect([...JOINT_KINDS].sort()).toEqual(carrying.sort());
  });
});
