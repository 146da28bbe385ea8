/** Tables and notes beside the roof plan. */

import { findCovering } from '../../catalog/index.js';
import type { Structure } from '../../structure/model.js';
import { cornersOf } from '../../structure/surfaces.js';
import type { Block, TableRow } from '../annotate/index.js';
import { SHEET_IDS, type SheetContext } from './contract.js';
import { standsOff } from './plan-base.js';
import { drainageRows } from './roof-drainage.js';
import { per12 } from './roof-plan-notes.js';
import { flashingTable } from './tie-in-words.js';

type Extreme = (...z: number[]) => number;

/** Height of the lowest or highest corner of a roof's plane, at the top of its sheathing, above the finished floor. */
const level = (structure: Structure, roof: string, pick: Extreme): number =>
  pick(...structure.surfaces.filter((s) => s.roof === roof).flatMap((s) => cornersOf(s).map((p) => p.z)));

const houseLevel = (structure: Structure, index: number, pick: Extreme): number =>
  pick(
    ...structure.housePlanes
      .filter((p) => p.id.startsWith(`HR${index + 1}-`))
      .flatMap((p) => p.outline.map((q) => q.z)),
  );

export function roofWords(ctx: SheetContext): Block[] {
  const { structure, project } = ctx.input;
  const { len } = ctx;
  const name = (id: string): string => findCovering(id)?.name ?? id;
  // Roofs of more than two slopes have eaves all round.
  const rake = (slopes: number, past: number): string => (slopes > 2 ? '–' : len(past));
  const rows: TableRow[] = [
    ...project.cover.roofs.map((r): TableRow => {
      const o = structure.overlays?.find((x) => x.roof === r.mark);
      return [
        { text: r.mark, mark: r.mark, path: r.path },
        o ? `new, on over ${o.plane}` : 'new',
        r.pitchText,
        name(r.finish.covering),
        len(r.eave),
        rake(structure.surfaces.filter((s) => s.roof === r.mark).length, r.rake),
        len(level(structure, r.mark, Math.min)),
        len(level(structure, r.mark, Math.max)),
      ];
    }),
    ...project.house.roofs.map(
      (r, i): TableRow => [
        { text: `HR${i + 1}`, path: r.path },
        'existing',
        per12(Math.tan(r.pitch)),
        name(r.covering),
        len(r.overhang),
        rake(structure.housePlanes.filter((p) => p.id.startsWith(`HR${i + 1}-`)).length, r.rake),
        len(houseLevel(structure, i, Math.min)),
        len(houseLevel(structure, i, Math.max)),
      ],
    ),
  ];
  const drains = drainageRows(ctx);
  return [
    {
      kind: 'table',
      title: 'Roofs',
      columns: [
        { head: 'Mark' },
        { head: 'State' },
        { head: 'Slope', align: 'right' },
        { head: 'Covering', grow: true },
        { head: 'Eave', align: 'right' },
        { head: 'Rake', align: 'right' },
        { head: 'Eave at', align: 'right' },
        { head: 'Top at', align: 'right' },
      ],
      rows,
    },
    { kind: 'gap' },
    {
      kind: 'table',
      title: 'Where the water goes',
      columns: [{ head: 'From' }, { head: 'Area', align: 'right' }, { head: 'By' }, { head: 'To', grow: true }],
      rows: drains,
    },
    { kind: 'gap' },
    ...flashingTable(ctx),
    { kind: 'heading', text: 'Notes' },
    {
      kind: 'numbered',
      items: [
        'Arrows point down the slope; slopes are rise in 12. New edges heavy, the house’s thin, its walls and slabs dashed; small squares are posts below. Overhangs are level, from the outer face of beams and the end frames, and from the walls of the house. Heights are of the roof plane above the finished floor.',
        ...(standsOff(structure)
          ? [
              `The house stands well clear of the new roof and is not drawn here: for how they stand to each other see sheet ${SHEET_IDS['footing-plan']}.`,
            ]
          : []),
        'Leaders discharge onto a splash block or into a drain that falls away from the house; nothing drains onto a neighbor, a walk or the foot of a post.',
        'Underlayment laps drip edge at eaves and lies under it at rakes; valleys are lined before either covering is laid.',
        ...(structure.overlays?.length
          ? [
              `Over ${structure.overlays.map((o) => o.plane).join(', ')}: cuts, valleys and order of work on ${SHEET_IDS['tie-in']}.`,
            ]
          : []),
        'Roof work needs fall protection. Keep off wet decks and loose underlayment.',
      ],
    },
  ];
}
