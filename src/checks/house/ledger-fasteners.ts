/**
 * Fasteners of a ledger: gravity, uplift, side load along the wall and pull out from it acting together, place by place
 * and combination by combination. NDS 2018 chapters 11 and 12; sheathing and spacers count as a gap.
 */
import type { Recorder } from '../../base/trace.js';
import { combinedLateralWithdrawal } from '../codes/nds-2018/index.js';
import { say } from '../codes/say.js';
import type { Check, CheckContext, Finding } from '../contract.js';
import { failed, measured, notApplicable, notEvaluated, RATIO_CAP } from '../finding.js';
import { componentUplifts } from '../joints/component-uplift.js';
import { sumText } from '../members/scan.js';
import { factorsOf, lateralOf, pullOf, reference, type Shank, shankOf, spotsOf } from './fastener.js';
import { armOf, searched, type Worst } from './ledger-search.js';
import { recordParts } from './ledger-shares.js';
import { flatForces, type HousePlace, housePlaces } from './places.js';
import { ROOM, roomsOf } from './washer-room.js';

const CLAUSE = 'NDS 2018 12.3, 12.4';
/** Words of somebody who leans on a table for decks. */
const DECK_TABLE = /deck|R ?507|R ?502\.2|joist span table/i;
export const DECK_NOTE =
  'A deck-ledger table is no proof here: it holds for floor load on a deck alone, without uplift and without snow against the wall; this calculation stands in its place.';

export const namesDeckTable = (basis: string): boolean => DECK_TABLE.test(basis);

function record(ctx: CheckContext, place: HousePlace, s: Shank, { F, at }: Worst, rec: Recorder): void {
  const n = s.f.rows.length;
  const step = (symbol: string, meaning: string, formula: string, substituted: string, value: number): void =>
    rec.step({ symbol, meaning, formula, substituted, value, unit: 'lb', clause: 'statics', from: [s.f.path] });
  rec.heading(`${F.joint.id}, ${F.combination}: ${n} × ${s.fastener.name}`);
  const combination = ctx.loads.combinations.find((c) => c.id === F.combination);
  const rows = flatForces(ctx, place.joints, place.wall)?.find((l) => l.joint === F.joint)?.rows;
  // Component wind is no combination of cases: its lift is worked out with the ties of the rafters.
  const sum = (k: number): string =>
    combination && rows
      ? sumText(ctx, combination, (c) => rows[3 * c + k]!)
      : `${F.combination}, as at the rafters' ties`;
  const formula = combination?.label ?? 'component uplift of the rafters by the lever';
  if (combination && rows) recordParts(ctx, place, F.joint, combination, rec);
  step('V', F.down >= 0 ? 'down on this place' : 'up on this place', formula, sum(1), Math.abs(F.down));
  step('H', 'along the wall on this place, side load with it', formula, sum(0), Math.abs(F.along));
  step('Fo', 'out from the wall on this place, side load with it', formula, sum(2), Math.max(0, F.out));
  step(
    'L',
    'lateral load of one fastener',
    '√(V² + H²) / n',
    `√(${F.down.toFixed(0)}² + ${F.along.toFixed(0)}²) / ${n}`,
    at.lateral,
  );
  const arm = armOf(s, F.down > 0);
  step(
    'T',
    'pull of the fastener farthest from the edge the ledger turns about',
    'out/n + V·(t + gap)/arm',
    `${Math.max(0, F.out).toFixed(0)}/${n} + ${Math.abs(F.down).toFixed(0)}·${(s.ledger.section.width + s.gap).toFixed(3)}/${arm.toFixed(2)}`,
    at.pull,
  );
}

/** Lengths that the yield modes and the pull start from. */
function recordLengths(s: Shank, rec: Recorder): void {
  const { f, ledger } = s;
  const step = (symbol: string, meaning: string, formula: string, substituted: string, value: number): void =>
    rec.step({ symbol, meaning, formula, substituted, value, unit: 'in', clause: 'NDS 2018 12.3.5', from: [f.path] });
  step('g', 'gap between ledger and framing', 'sheathing + spacers', `${f.through} + ${f.standoff}`, s.gap);
  step(
    'lm',
    'bearing length in the framing',
    f.kind === 'bolt' ? 'its depth' : 'least of its depth and length − ledger − gap − tip',
    f.kind === 'bolt'
      ? `${f.framing.depth}`
      : `${f.framing.depth}, ${f.length} − ${ledger.section.width} − ${s.gap} − ${s.fastener.tip ?? 2 * s.fastener.D}`,
    s.lm,
  );
  if (f.kind !== 'bolt')
    step(
      'p',
      'thread in the framing without its tip',
      'thread − tip, at most lm',
      `${say(s.cut)} − ${say(s.fastener.tip ?? 2 * s.fastener.D)}, ${say(s.lm)}`,
      s.thread,
    );
}

export const ledgerFasteners: Check = {
  id: 'ledger-fasteners',
  title: 'Ledger fasteners into the house',
  subjects(ctx) {
    const { ledgers } = ctx.project.cover;
    return ledgers.length > 0 ? ledgers.map((l) => ({ id: l.mark, path: l.path })) : [{ id: 'cover', path: '/cover' }];
  },
  run(subject, ctx, rec): Finding {
    const place = housePlaces(ctx).find((p) => p.id === subject.id && p.kind === 'ledger');
    if (!place) return notApplicable(CLAUSE, 'no ledger is fastened to the house');
    return fastenersOf(ctx, place, rec);
  },
};

/** The answer for one ledger; also the calculated connection of its joint mark. */
export function fastenersOf(ctx: CheckContext, place: HousePlace, rec?: Recorder): Finding {
  const f = place.ledger?.fastening;
  if (!f)
    return notEvaluated(
      CLAUSE,
      `How ${place.id} is fastened is not said. Needed: "fastening" with its screws or bolts and the wood they go into.`,
    );
  const s = shankOf(f, place.member);
  if ('why' in s) return failed(CLAUSE, `${place.id}: ${s.why}.`);
  const { missing } = componentUplifts(ctx);
  const blind = ctx.structure.joints.find((j) => missing.has(j.id) && j.ties.at(-1)?.part === place.member.id);
  if (blind)
    return notEvaluated(
      CLAUSE,
      `${place.id}: the component wind on its rafters is not known, see ${blind.mark} and the wind checks.`,
    );
  const found = searched(ctx, place, s);
  if (!found?.worst) return notEvaluated(CLAUSE, 'no forces were worked out for this ledger, see the frame check');
  const { first, Z, k, worst } = found;
  for (const spot of spotsOf(s, found)) {
    rec?.step({
      symbol: 'a',
      meaning: `distance ${spot.what}`,
      formula: 'at least',
      substituted: `${spot.have.toFixed(2)} in of ${spot.need.toFixed(2)} in`,
      value: spot.have,
      unit: 'in',
      clause: 'NDS 2018 12.5.1',
      from: [f.path],
    });
    if (spot.have < spot.need - 1e-6)
      return failed(
        'NDS 2018 12.5.1',
        `${place.id}: a fastener stands ${Math.max(0, spot.have).toFixed(2)} in ${spot.what}, where ${spot.need.toFixed(2)} in is the least: move the rows, use thinner fasteners, or go into the floor band or solid blocking.`,
      );
  }
  for (const room of roomsOf(s, place, first)) {
    rec?.step({
      symbol: 'r',
      meaning: `room for washers and heads ${room.what}`,
      formula: 'at least',
      substituted: `${room.have.toFixed(2)} in of ${room.need.toFixed(2)} in`,
      value: room.have,
      unit: 'in',
      clause: ROOM,
      from: [f.path],
    });
    if (room.have < room.need - 1e-6)
      return failed(
        ROOM,
        `${place.id}: washers or heads cannot be fitted: ${Math.max(0, room.have).toFixed(2)} in ${room.what}, where ${room.need.toFixed(2)} in is the least for ${s.f.washer.toFixed(3)} in washers: ${room.remedy}.`,
      );
  }
  const { F, at } = worst;
  if (!Number.isFinite(at.pull))
    return failed(
      CLAUSE,
      `${place.id} stands off the wall on spacers with one fastener at each place: nothing keeps it from turning. Give two rows, or no spacers.`,
    );
  if (rec) {
    rec.heading(`${place.id}: one ${s.fastener.name}, the weaker of both directions`);
    recordLengths(s, rec);
    reference(s, rec);
    factorsOf(s, first, rec);
    record(ctx, place, s, worst, rec);
  }
  const Zp = lateralOf(Z, k, F.CD, rec);
  const Pp = pullOf(s, k, F.CD, rec);
  const screw = f.kind !== 'bolt';
  const alpha = Math.atan2(at.pull, at.lateral);
  const both =
    screw && at.ratio < RATIO_CAP
      ? combinedLateralWithdrawal(f.kind === 'lag' ? 'lag' : 'wood-screw', Pp, Zp, alpha, rec)
      : Zp;
  const R = Math.hypot(at.lateral, at.pull);
  const deck = namesDeckTable(f.basis) ? ` ${DECK_NOTE}` : '';
  return measured(
    {
      demand: screw ? R : at.lateral,
      capacity: both,
      unit: 'lb',
      combination: F.combination,
      clause: screw ? 'NDS 2018 12.4.1' : 'NDS 2018 11.3, 3.10',
      formula: screw ? "√(L² + T²) / Zα'" : "L/Z' + T/Pw",
      ratio: at.ratio,
      note: `${f.rows.length} × ${s.fastener.name} at ${f.spacing} in: ${Math.ceil(at.lateral)} lb across and ${Math.ceil(at.pull)} lb pull on one.${deck}`,
      remedy: `${place.id}: its fasteners are overloaded at ${F.joint.id}: closer spacing, another row, or thicker fasteners.${deck}`,
    },
    rec,
  );
}
