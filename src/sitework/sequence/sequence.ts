import { CONCRETE_BAGS, findSheathing, SHEET_LENGTH, SHEET_WIDTH } from '../../catalog/index.js';
import type { Project } from '../../project/model.js';
import { roleWords } from '../../structure/joint-words.js';
import type { Member, Structure } from '../../structure/model.js';
import { liftOf, ONE_PERSON, ONE_PERSON_SOURCE } from './lifting.js';
import { type Schedule, scheduleOf } from './schedule.js';
import { tasksOf } from './tasks.js';

export interface HeavyPiece {
  readonly marks: readonly string[];
  readonly what: string;
  /** 0 where the take-off counts them. */
  readonly count: number;
  /** Of the heaviest of them. */
  readonly pounds: number;
  readonly lift: string;
}

export interface Sequence extends Schedule {
  /** Pieces that one person does not lift, the heaviest first. */
  readonly heavy: readonly HeavyPiece[];
  readonly heavySource: string;
  readonly cautions: readonly string[];
}

const CAUTIONS: readonly string[] = [
  'Digging: utilities located and marked before the first shovel; hand dig near marks; cover or fence open holes; nobody in a deep hole alone.',
  'Lifting: 51 lb is what one person lifts at best, close to the body and at waist height; less overhead. Nobody under a load. A crane is rigged and signaled by people who know how.',
  'Trusses: temporary bracing goes in with each truss. More roofs fall while they are set than ever after.',
  'Ladders: level ground, tied, three rungs above the eave, one rung in four out; a scaffold for all work that needs both hands.',
  'Treated wood: cut outdoors, dust mask, gloves, eye protection; do not burn scraps; wash before eating.',
  'Electricity: circuits off, locked and tested; outdoor tools on GFCI; ladders and metal away from the service drop.',
];

const what = (m: Member): string => (m.truss ? 'truss' : `${roleWords(m.role)}, ${m.section.label}`);

function heavyPieces(project: Project, structure: Structure): readonly HeavyPiece[] {
  const rows = new Map<string, HeavyPiece>();
  for (const m of structure.members) {
    if (m.state !== 'new') continue;
    const lift = liftOf(m);
    if (lift.people < 2 && !lift.machine) continue;
    const key = what(m);
    const known = rows.get(key);
    const heavier = known !== undefined && known.pounds >= Math.round(lift.pounds);
    rows.set(key, {
      what: key,
      marks: [...new Set([...(known?.marks ?? []), m.mark])],
      count: (known?.count ?? 0) + 1,
      pounds: heavier ? known.pounds : Math.round(lift.pounds),
      lift: heavier ? known.lift : lift.words,
    });
  }
  // Panels and bags are told by name, not counted here: their count is the take-off's.
  const panels = new Set(project.cover.roofs.map((r) => r.finish.sheathing).filter((s) => s !== ''));
  const sheets = [...panels].flatMap((id): HeavyPiece[] => {
    const panel = findSheathing(id.replace(/^[a-z]+-/, ''));
    const pounds = panel ? Math.round((panel.weight * SHEET_LENGTH * SHEET_WIDTH) / 144) : 0;
    return pounds > ONE_PERSON
      ? [{ marks: [], what: `sheathing panel, ${id}`, count: 0, pounds, lift: '2 people' }]
      : [];
  });
  const bags = CONCRETE_BAGS.filter((b) => b.weight > ONE_PERSON).map(
    (b): HeavyPiece => ({
      marks: [],
      what: `bag of concrete mix, ${b.weight} lb`,
      count: 0,
      pounds: b.weight,
      lift: '2 people, or smaller bags',
    }),
  );
  return [...rows.values(), ...sheets, ...bags].sort((a, b) => b.pounds - a.pounds || (a.what < b.what ? -1 : 1));
}

/** Build order as bar-chart data, heavy pieces, and the cautions of the whole work. */
export const sequenceOf = (project: Project, structure: Structure): Sequence => ({
  ...scheduleOf(tasksOf(structure)),
  heavy: heavyPieces(project, structure),
  heavySource: ONE_PERSON_SOURCE,
  cautions: CAUTIONS,
});
