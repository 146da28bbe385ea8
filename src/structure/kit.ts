import type { Issue } from '../base/issue.js';
import type { Vec2 } from '../base/vec.js';
import type { BeamLine, HouseWall, LedgerSpec, Project } from '../project/model.js';
import { error, token } from './issues.js';
import type { Section } from './model.js';
import { makeSection } from './sections.js';

/** A beam line with its section and direction, before its height is known. */
export interface BeamPlan {
  readonly line: BeamLine;
  readonly section: Section;
  readonly dir: Vec2;
  readonly length: number;
}

export interface LedgerPlan {
  readonly spec: LedgerSpec;
  readonly wall: HouseWall;
  readonly section: Section;
  /** House axis the wall runs along, and its outward normal. */
  readonly axis: 'x' | 'y';
  readonly out: Vec2;
  /** Distances of the wall line and of the face that framing hangs on, measured along `out`. */
  readonly line: number;
  readonly face: number;
}

/** Plan point of a ledger at a coordinate along its wall's axis, `d` from the origin along the wall's normal. */
export const atLedger = (l: LedgerPlan, along: number, d: number): Vec2 =>
  l.axis === 'x' ? { x: along, y: l.out.y * d } : { x: l.out.x * d, y: along };

/** What the placing functions share: the project, the issues met so far, and named things by name. */
export interface Kit {
  readonly project: Project;
  readonly issues: Issue[];
  /** Section by its name in `choices.sections`; an unknown one is reported once and gives undefined. */
  readonly section: (name: string, usedAt: string) => Section | undefined;
  readonly beams: ReadonlyMap<string, BeamPlan>;
  readonly ledgers: ReadonlyMap<string, LedgerPlan>;
}

/** Distances along a beam line where it stands on a post, its own or shared, in order. */
export const standsAt = (b: BeamLine): number[] =>
  [...b.posts, ...(b.shared ?? [])].map((p) => p.at).sort((p, q) => p - q);

/** Plan point at a distance along a beam line. */
export const onBeam = (b: BeamPlan, along: number): Vec2 => ({
  x: b.line.from.x + b.dir.x * along,
  y: b.line.from.y + b.dir.y * along,
});

function sectionFinder(project: Project, issues: Issue[]): Kit['section'] {
  const known = new Map<string, Section | undefined>();
  return (name, usedAt) => {
    if (known.has(name)) return known.get(name);
    const choice = Object.hasOwn(project.choices.sections, name) ? project.choices.sections[name] : undefined;
    const path = `/choices/sections/${token(name)}`;
    let section: Section | undefined;
    if (choice === undefined) {
      const names = Object.keys(project.choices.sections);
      issues.push(
        error('section-unknown', usedAt, 'No section of this name is listed under choices.', {
          found: name,
          expected: names.length > 0 ? `one of ${names.join(', ')}` : 'a section under choices',
        }),
      );
    } else {
      const made = makeSection(choice, { choice: name, path });
      if (made.ok) section = made.section;
      else issues.push(error('section-unknown', path, made.message, { found: made.found, expected: made.expected }));
    }
    known.set(name, section);
    return section;
  };
}

function planBeam(line: BeamLine, section: Section | undefined, issues: Issue[]): BeamPlan | undefined {
  const dx = line.to.x - line.from.x;
  const dy = line.to.y - line.from.y;
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) {
    issues.push(
      error('beam-without-length', line.path, 'The beam starts and ends at the same point.', { subject: line.mark }),
    );
    return undefined;
  }
  return section && { line, section, dir: { x: dx / length, y: dy / length }, length };
}

function planLedger(
  spec: LedgerSpec,
  section: Section | undefined,
  kit: { project: Project; issues: Issue[] },
): LedgerPlan | undefined {
  const wall = kit.project.house.walls[spec.wall];
  const refuse = (code: string, message: string, expected: string): undefined => {
    kit.issues.push(error(code, spec.path, message, { subject: spec.mark, expected }));
    return undefined;
  };
  if (wall === undefined)
    return refuse('wall-unknown', 'The ledger names a wall that the house does not have.', 'the name of a house wall');
  const along = { x: wall.end.x - wall.start.x, y: wall.end.y - wall.start.y };
  const axis = Math.abs(along.y) <= 1e-6 ? 'x' : 'y';
  // Walls follow each other clockwise seen from above, so the outside is to the left of the way along one.
  const out = axis === 'x' ? { x: 0, y: Math.sign(along.x) } : { x: -Math.sign(along.y), y: 0 };
  if ((axis === 'y' && Math.abs(along.x) > 1e-6) || out.y < 0)
    return refuse(
      'ledger-wall-direction',
      'A ledger needs a wall that faces the yard (+y) or sideways (+x or -x).',
      'the rear wall, or the side wall of a wing',
    );
  if (!(spec.to > spec.from))
    return refuse('ledger-without-length', 'The ledger ends before it starts.', '"to" greater than "from"');
  if (2 * (spec.fastening?.end ?? 0) >= spec.to - spec.from)
    return refuse(
      'ledger-fasteners-cross',
      'The first fastener places from both ends of the ledger cross each other.',
      '"end" of the fastening less than half the ledger',
    );
  const [low, high] = [wall.start[axis], wall.end[axis]].sort((p, q) => p - q) as [number, number];
  if (spec.from < low - 1e-6 || spec.to > high + 1e-6)
    return refuse('ledger-off-wall', 'The ledger runs past the end of its wall.', `${axis} from ${low} to ${high} in`);
  const line = axis === 'x' ? wall.start.y : wall.start.x * out.x;
  return section && { spec, wall, section, axis, out, line, face: line + section.width };
}

export function makeKit(project: Project, issues: Issue[]): Kit {
  const section = sectionFinder(project, issues);
  const beams = new Map<string, BeamPlan>();
  for (const line of project.cover.beams) {
    const plan = planBeam(line, section(line.section, `${line.path}/section`), issues);
    if (plan) beams.set(line.mark, plan);
  }
  const ledgers = new Map<string, LedgerPlan>();
  for (const spec of project.cover.ledgers) {
    const plan = planLedger(spec, section(spec.section, `${spec.path}/section`), { project, issues });
    if (plan) ledgers.set(spec.mark, plan);
  }
  return { project, issues, section, beams, ledgers };
}
