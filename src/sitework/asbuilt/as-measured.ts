/**
 * The project with posts, beams and pier tops where they were measured, for a second run of the flow beside the first.
 * Beams stay straight and parallel to their drawn lines, as the roofs on them need: a beam moves across by the mean of its
 * posts, a beam held by the house not at all; what a post stands off its beam is told by the fit rules.
 */
import type { BeamLine, FootingChoice, Project } from '../../project/model.js';
import { placeGround, surfaceAt } from '../../structure/ground.js';
import type { Structure } from '../../structure/model.js';
import { layoutOf } from '../layout/index.js';
import { measured } from './measure.js';
import { beamOffsets, postOffsets } from './offsets.js';
import type { BeamOff } from './rules/contract.js';

const meanAcross = (b: BeamOff): number =>
  b.heldByHouse || b.posts.length === 0 ? 0 : b.posts.reduce((s, p) => s + p.across, 0) / b.posts.length;

function movedBeam(line: BeamLine, b: BeamOff): BeamLine {
  const shift = meanAcross(b);
  const move = (p: BeamLine['from']) => ({ x: p.x - b.dir.y * shift, y: p.y + b.dir.x * shift });
  const along = (mark: string): number => b.posts.find((p) => p.off.post.mark === mark)?.along ?? 0;
  return {
    ...line,
    from: move(line.from),
    to: move(line.to),
    posts: line.posts.map((p) => ({ ...p, at: p.at + along(p.mark) })),
    ...(line.shared ? { shared: line.shared.map((s) => ({ ...s, at: s.at + along(s.post) })) } : {}),
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
  const posts = postOffsets(structure, m.points);
  const offsets = beamOffsets(project, posts);
  const moved = ridgesBetween(
    project.cover.beams.map((line, i) => movedBeam(line, offsets[i]!)),
    project,
  );
  const ground = placeGround(project.patio);
  const footings: Record<string, FootingChoice> = { ...project.choices.footings };
  const anchors = { ...project.choices.anchors };
  const beams = moved.map((line) => {
    const size = Math.hypot(line.to.x - line.from.x, line.to.y - line.from.y);
    const dir = { x: (line.to.x - line.from.x) / size, y: (line.to.y - line.from.y) / size };
    return {
      ...line,
      posts: line.posts.map((p) => {
        const height = m.points.find((q) => q.name === p.footingMark)?.height;
        const choice = footings[p.footing];
        if (!height || !choice) return p;
        const at = { x: line.from.x + dir.x * p.at, y: line.from.y + dir.y * p.at };
        const name = `${p.footing} as built at ${p.footingMark}`;
        footings[name] = toppedAt(choice, height.level, surfaceAt(ground, at));
        const anchor = anchors[p.footing];
        if (anchor) anchors[name] = anchor;
        return { ...p, footing: name };
      }),
    };
  });
  return {
    ...project,
    cover: { ...project.cover, beams },
    choices: { ...project.choices, footings, ...(project.choices.anchors ? { anchors } : {}) },
  };
}
