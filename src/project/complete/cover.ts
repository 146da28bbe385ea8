import { formatLength } from '../../base/quantity/index.js';
import type { BeamLine, Cover, CoverRoof, FramingChoice, PostSpec, WoodChoice } from '../model.js';
import type { WrittenCover } from '../schema/cover.js';
import { completeEnds, completeFastening } from './attachment.js';
import { completeElectrical } from './electrical.js';
import type { Notebook } from './notebook.js';
import { completeOverlay } from './overlay.js';
import { completeTies } from './ties.js';
import { completeDeferred, completePaper } from './truss-papers.js';

type WrittenRoof = WrittenCover['roofs'][number];
type WrittenFraming = WrittenRoof['framing'];

const INCHES_PER_FOOT = 12;

/** Truss lumber: the plant decides; what is not said is taken as plain dry lumber and listed. */
function trussWood(w: Extract<WrittenFraming, { wood: unknown }>['wood'], path: string, note: Notebook): WoodChoice {
  const why = 'Not given; it serves for weight and drawing only, the truss plant’s engineer decides.';
  return {
    species: w.species,
    grade: w.grade,
    treatment: note.default(w.treatment, `${path}/treatment`, 'none', 'Truss lumber untreated', why),
    incised: note.default(w.incised, `${path}/incised`, false, 'Truss lumber not incised', why),
    service: note.default(w.service, `${path}/service`, 'dry', 'Truss lumber dry in service', why),
  };
}

function framing(w: WrittenFraming, path: string, note: Notebook): FramingChoice {
  if (w.kind === 'rafter') return w;
  return {
    kind: w.kind,
    spacing: w.spacing,
    chord: w.chord,
    wood: trussWood(w.wood, `${path}/wood`, note),
    heel: w.heel,
    bottomPitch: w.kind === 'scissor-truss' ? w.bottomPitch : 0,
    weight: w.weight * INCHES_PER_FOOT,
    ...(w.kind === 'scissor-truss' && w.spreadLimit !== undefined ? { spreadLimit: w.spreadLimit } : {}),
    ...(w.kind === 'scissor-truss' && w.slides !== undefined ? { slides: w.slides } : {}),
  };
}

function roof(w: WrittenRoof, path: string, note: Notebook, written: WrittenCover): CoverRoof {
  const every = {
    mark: w.mark,
    pitch: w.pitch.angle,
    pitchText: w.pitch.text,
    bearing: w.bearing,
    framing: framing(w.framing, `${path}/framing`, note),
    finish: w.finish,
    eave: w.eave,
    path,
  };
  if (w.kind === 'hip') {
    const at = w.ends.map((mark) => written.beams.find((b) => b.mark === mark)?.from[w.ridge] ?? 0);
    return {
      ...every,
      kind: 'hip',
      beams: [w.beams[0]!, w.beams[1]!],
      ends: [w.ends[0]!, w.ends[1]!],
      ridge: w.ridge,
      ridgeBeam: w.ridgeBeam,
      hip: w.hip,
      from: Math.min(...at),
      to: Math.max(...at),
      rake: 0,
    };
  }
  const common = {
    ...every,
    from: w.from,
    to: w.to,
    rake: w.rake,
    ...(w.rakeFraming === undefined ? {} : { rakeFraming: w.rakeFraming }),
  };
  if (w.kind === 'gable')
    return {
      ...common,
      kind: 'gable',
      beams: [w.beams[0]!, w.beams[1]!],
      ridge: w.ridge,
      ...(w.ridgeBeam === undefined ? {} : { ridgeBeam: w.ridgeBeam }),
      ...completeOverlay(w.meetsHouse, w.mark, path, note),
    };
  const { ledger, beam } = w.high;
  return {
    ...common,
    kind: 'shed',
    ...(w.fall === undefined ? {} : { fall: w.fall }),
    high: ledger === undefined ? { beam: beam! } : { ledger },
    low: w.low,
    highOverhang: w.highOverhang,
  };
}

function completePost(p: WrittenCover['beams'][number]['posts'][number], path: string): PostSpec {
  return { ...p, braces: p.braces?.map((k, i) => ({ ...k, path: `${path}/braces/${i}` })), path };
}

export function completeCover(w: WrittenCover, wallNames: readonly string[], note: Notebook): Cover {
  const beams = w.beams.map((b, i): BeamLine => {
    const path = `/cover/beams/${i}`;
    // Over three posts or more, one piece or several is a different beam, so a silent choice is listed.
    const splices =
      b.posts.length > 2
        ? note.default(
            b.splices,
            `${path}/splices`,
            [],
            `${b.mark} runs in one piece over its ${b.posts.length} posts, ${formatLength(Math.hypot(b.to.x - b.from.x, b.to.y - b.from.y))} long`,
            'No splices are given.',
          )
        : (b.splices ?? []);
    const { ends, ...rest } = b;
    return {
      ...rest,
      posts: b.posts.map((p, j) => completePost(p, `${path}/posts/${j}`)),
      splices,
      ...completeEnds(ends, b.mark, path, wallNames, note),
      path,
    };
  });
  for (const axis of ['x', 'y'] as const) {
    if (w.lateral[axis] !== 'unknown') continue;
    note.ask(
      `/cover/lateral/${axis}`,
      `What may resist side load along ${axis}: the house, knee braces, or fixed posts?`,
      'nothing',
    );
  }
  return {
    attachment: w.attachment,
    roofs: w.roofs.map((r, i) => roof(r, `/cover/roofs/${i}`, note, w)),
    beams,
    ledgers: w.ledgers.map(({ fastening, ...l }, i) => {
      const path = `/cover/ledgers/${i}`;
      return { ...l, wall: wallNames.indexOf(l.wall), ...completeFastening(fastening, l.mark, path, note), path };
    }),
    struts: w.struts?.map((s, i) => ({ ...s, path: `/cover/struts/${i}` })),
    lateral: w.lateral,
    houseTies: completeTies(w, wallNames, note),
    use: w.use,
    ...(w.trussPapers ? { trussPapers: w.trussPapers.map(completePaper) } : {}),
    ...(w.electrical ? { electrical: completeElectrical(w.electrical) } : {}),
    ...(w.deferred ? { deferred: completeDeferred(w.deferred, note) } : {}),
  };
}
