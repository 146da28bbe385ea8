/**
 * The project with posts, beams and pier tops where they were measured, for a second run of the flow beside the first.
 * What the readings cannot tell from the drawn place (within twice their sigma) stays drawn: a sixteenth of noise would turn
 * results that stand at a limit. Beams stay straight and parallel to their drawn lines, as the roofs on them need: a beam
 * moves across by the mean of its posts, a beam held by the house not at all; posts tied by a cross member stay opposite each
 * other. What a post stands off all that is told by the fit rules.
 */
import type { BeamLine, FootingChoice, Project } from '../../project/model.js';
import { placeGround, surfaceAt } from '../../structure/ground.js';
import type { Structure } from '../../structure/model.js';
import { layoutOf } from '../layout/index.js';
import { measured } from './measure.js';
import type { MeasuredPoint } from './model.js';
import { beamOffsets, postOffsets } from './offsets.js';
import type { BeamOff } from './rules/contract.js';

/** Sigmas by which a measured value must leave the drawn one to count. */
const TOLD = 2;

const told = (measured: number, drawn: number, sigma: number): number =>
  Math.abs(measured - drawn) > TOLD * sigma ? measured : drawn;

/** Only what the readings prove. */
function proven(p: MeasuredPoint): MeasuredPoint {
  const { plan, height, designed } = p;
  return {
    ...p,
    plan: plan && {
      ...plan,
      along: told(plan.along, designed.along, plan.sigmaAlong),
      out: told(plan.out, designed.out, plan.sigmaOut),
    },
    height: height && { ...height, level: told(height.level, designed.level ?? height.level, height.sigma) },
  };
}

const meanAcross = (b: BeamOff): number =>
  b.heldByHouse || b.posts.length === 0 ? 0 : b.posts.reduce((s, p) => s + p.across, 0) / b.posts.length;

/** How far each post moves along its beam; two posts with a cross member between them by their mean. */
function movesAlong(project: Project, offsets: readonly BeamOff[]): ReadonlyMap<string, number> {
  const moves = new Map(offsets.flatMap((b) => b.posts.map((p) => [p.off.post.mark, p.along] as const)));
  const dirOf = (post: string) =>
    offsets[project.cover.beams.findIndex((l) => l.posts.some((p) => p.mark === post))]?.dir;
  for (const s of project.cover.struts ?? []) {
    const [a, b] = [moves.get(s.from), moves.get(s.to)];
    const [d, e] = [dirOf(s.from), dirOf(s.to)];
    if (a === undefined || b === undefined || !d || !e) continue;
    const same = d.x * e.x + d.y * e.y < 0 ? -1 : 1;
    const mean = (a + same * b) / 2;
    moves.set(s.from, mean);
    moves.set(s.to, same * mean);
  }
  return moves;
}

function movedBeam(line: BeamLine, b: BeamOff, along: ReadonlyMap<string, number>): BeamLine {
  const shift = meanAcross(b);
  const move = (p: BeamLine['from']) => ({ x: p.x - b.dir.y * shift, y: p.y + b.dir.x * shift });
  const own = (mark: string): number => b.posts.find((p) => p.off.post.mark === mark)?.along ?? 0;
  return {
    ...line,
    from: move(line.from),
    to: move(line.to),
    posts: line.posts.map((p) => ({ ...p, at: p.at + (along.get(p.mark) ?? 0) })),
    ...(line.shared ? { shared: line.shared.map((s) => ({ ...s, at: s.at + own(s.post) })) } : {}),
  };
}

/** A footing whose concrete ends at a measured level; one whose top is not its own stays as it is. */
function toppedAt(choice: FootingChoice, level: number, surface: number): FootingChoice {
  if ('top' in choice) return { ...choice, top: level - surface };
  if ('thickness' in choice) return { ...choice, bottom: surface + choice.thickness - level };
  return choice;
}

/** A ridge beam stays midway between the eave beams of its roof. */
function ridgesBetween(beams: readonly BeamLine[], project: Project): readonly BeamLine[] {
  return beams.map((line) => {
    const roof = project.cover.roofs.find((r) => 'ridgeBeam' in r && r.ridgeBeam === line.mark && 'beams' in r);
    if (!roof || !('beams' in roof)) return line;
    const moves = roof.beams.map((mark) => {
      const [was, now] = [project.cover.beams, beams].map((all) => all.find((b) => b.mark === mark));
      return was && now ? { x: now.from.x - was.from.x, y: now.from.y - was.from.y } : { x: 0, y: 0 };
    });
    const drawn = project.cover.beams.find((b) => b.mark === line.mark)!;
    const by = { x: (moves[0]!.x + moves[1]!.x) / 2, y: (moves[0]!.y + moves[1]!.y) / 2 };
    const move = (p: BeamLine['from']) => ({ x: p.x + by.x, y: p.y + by.y });
    return { ...line, from: move(drawn.from), to: move(drawn.to) };
  });
}

/** The same project when nothing was measured. `structure` is the one placed from it. */
export function asMeasured(project: Project, structure: Structure): Project {
  const m = measured(project, layoutOf(structure));
  if (!m) return project;
  const points = m.points.map(proven);
  const offsets = beamOffsets(project, postOffsets(structure, points));
  const along = movesAlong(project, offsets);
  const moved = ridgesBetween(
    project.cover.beams.map((line, i) => movedBeam(line, offsets[i]!, along)),
    project,
  );
  const ground = placeGround(project.patio);
  const footings: Record<string, FootingChoice> = { ...project.choices.footings };
  const beams = moved.map((line) => {
    const size = Math.hypot(line.to.x - line.from.x, line.to.y - line.from.y);
    const dir = { x: (line.to.x - line.from.x) / size, y: (line.to.y - line.from.y) / size };
    return {
      ...line,
      posts: line.posts.map((p) => {
        const point = points.find((q) => q.name === p.footingMark);
        const choice = footings[p.footing];
        if (!point?.height || !choice || point.height.level === point.designed.level) return p;
        const at = { x: line.from.x + dir.x * p.at, y: line.from.y + dir.y * p.at };
        const name = `${p.footing} as built at ${p.footingMark}`;
        footings[name] = toppedAt(choice, point.height.level, surfaceAt(ground, at));
        return { ...p, footing: name, drawnFooting: p.footing };
      }),
    };
  });
  return { ...project, cover: { ...project.cover, beams }, choices: { ...project.choices, footings } };
}
