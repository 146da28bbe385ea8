import { area } from '../../../base/plane.js';
import type { Footing } from '../../../structure/model.js';
import { poursOf } from '../../items/concrete.js';
import type { ScopeInput, ScopeLine, Trade } from '../model.js';
import { len, list } from '../words.js';

const shape = (f: Footing): string => {
  const pad = f.round ? `${len(f.size)} round` : `${len(f.size)} square, ${len(f.padThickness)} thick`;
  const pier = !f.round && f.pierDiameter > 0 ? `, pier ${len(f.pierDiameter)} round` : '';
  return `${pad}${pier}, bottom ${len(f.surface - f.bottom)} below the surface beside it`;
};

/** Footings that are alike in all a digger and former must know. */
function groups(footings: readonly Footing[]): { text: string; marks: string[]; steel: string }[] {
  const out = new Map<string, { text: string; marks: string[]; steel: string }>();
  for (const f of footings) {
    const text = shape(f);
    const g = out.get(`${text}|${f.steel}`) ?? { text, marks: [], steel: f.steel };
    g.marks.push(f.mark);
    out.set(`${text}|${f.steel}`, g);
  }
  return [...out.values()];
}

/** Soil out of a hole no wider than the concrete, cubic yards. */
const spoil = (footings: readonly Footing[]): number =>
  footings.reduce((sum, f) => {
    const plan = f.round ? (Math.PI * f.size * f.size) / 4 : f.size * f.size;
    return sum + plan * Math.max(0, f.surface - f.bottom);
  }, 0) / 46656;

function lines({ project, structure }: ScopeInput): Omit<ScopeLine, 'id'>[] {
  const footings = structure.footings.filter((f) => !f.onSlab);
  const slabs = structure.slabs.filter((s) => s.state === 'new');
  if (footings.length === 0 && slabs.length === 0) return [];
  const pours = poursOf(structure);
  const kept = structure.slabs.filter((s) => s.state === 'existing');
  const out: Omit<ScopeLine, 'id'>[] = [
    {
      text: 'Have underground lines located before any digging, keep the marks, and dig by hand near them.',
      quantity: '',
    },
  ];
  if (kept.length > 0)
    out.push({
      text: `Saw the kept slab ${list(kept.map((s) => s.mark))} where footings come and make it good after.`,
      quantity: `${footings.length} places`,
    });
  for (const g of groups(footings)) {
    out.push({
      text: `Dig and form ${list(g.marks)}: ${g.text}. Level bottoms in firm soil, no loose earth.`,
      quantity: `${g.marks.length} each`,
    });
    if (g.steel)
      out.push({ text: `Place the steel of ${list(g.marks)}: ${g.steel}.`, quantity: `${g.marks.length} sets` });
  }
  const anchors = Object.entries(project.choices.anchors ?? {}).filter(([name]) =>
    footings.some((f) => f.choice === name),
  );
  for (const [name, a] of anchors)
    out.push({
      text: `Set anchors of "${name}" to the stake-out, ${len(a.bolt)} headed, ${len(a.embedment)} embedded, before the pour.`,
      quantity: `${footings.filter((f) => f.choice === name).length} each`,
    });
  if (footings.length > 0)
    out.push(
      {
        text: 'Call the footing inspection with holes open and steel in place. No concrete before it is passed.',
        quantity: '',
      },
      {
        text: 'Pour each footing in one go; tops level, at the elevation of the stake-out sheet.',
        quantity: `${(pours.find((p) => p.id === 'footings')?.net ?? 0).toFixed(1)} cu ft net, ${Math.max(...footings.map((f) => f.fc))} psi or more`,
      },
      {
        text: 'Take the spoil away, or leave it where the owner says.',
        quantity: `about ${spoil(footings).toFixed(1)} cu yd in place`,
      },
    );
  for (const s of slabs)
    out.push({
      text: `New slab ${s.mark}: ${len(s.thickness)} thick on a prepared base, sloped as drawn, broom finish, joints cut.`,
      quantity: `${(area(s.outline) / 144).toFixed(0)} sq ft`,
    });
  out.push({ text: 'Keep the concrete damp and free of load as the sheets say; protect it from frost.', quantity: '' });
  return out;
}

export const concrete: Trade = {
  title: 'Footings and concrete',
  letter: 'C',
  phases: ['footings', 'slab'],
  lines,
  questions: [
    'Who calls for the utility locate, and who is liable for a cut line?',
    'What happens, and at what price, when rock, water or loose fill is met?',
    'Which mix, from which plant, and will the ticket be left with us?',
    'Who sets the anchors, and who checks them against the stake-out before the pour?',
  ],
  payments: [
    {
      when: 'On signing',
      percent: 10,
      proof: 'contract signed, insurance and license seen; no more than your state allows',
    },
    {
      when: 'Footings poured',
      percent: 50,
      proof: 'footing inspection passed before the pour; concrete ticket; conditional release',
    },
    { when: 'All concrete done', percent: 30, proof: 'slab and post bases as drawn; site clean; conditional release' },
    {
      when: 'Final',
      percent: 10,
      proof: 'final inspection passed; punch list done; final releases of contractor and suppliers',
    },
  ],
};
