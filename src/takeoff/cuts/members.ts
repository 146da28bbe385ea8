/** Every member of the structure as the pieces it is made of. Trusses come from the plant and are left out. */
import type { Phase } from '../../project/model/buying.js';
import type { Member, MemberRole, Structure } from '../../structure/model.js';
import type { TakeoffInput } from './input.js';
import type { LooseCut, StockSpec } from './model.js';
import { specOf } from './stock.js';

const PHASE: Readonly<Record<MemberRole, Phase>> = {
  post: 'posts-and-beams',
  beam: 'posts-and-beams',
  ledger: 'posts-and-beams',
  strut: 'posts-and-beams',
  brace: 'posts-and-beams',
  rafter: 'framing',
  hip: 'framing',
  ridge: 'framing',
  tie: 'framing',
  truss: 'framing',
  'gable-truss': 'framing',
  outlooker: 'framing',
  barge: 'framing',
  blocking: 'framing',
  'fill-rafter': 'framing',
  'valley-plate': 'framing',
  fascia: 'framing',
  gutter: 'finish',
};

/** Members cut on the site or ordered to length. */
export const isCut = (m: Member): boolean => m.state === 'new' && m.truss === undefined && m.role !== 'gutter';

/**
 * Where a run may be joined: over the framing it is nailed to. Only trim has such places; whatever carries a load between
 * its supports is one piece.
 */
function joinPlaces(m: Member, structure: Structure): number[] {
  return structure.joints
    .filter((j) => j.kind === 'fascia-to-framing' && j.ties[0]?.part === m.id)
    .map((j) => j.ties[0]!.along)
    .sort((a, b) => a - b);
}

/** A run longer than the longest board, cut at the last place to join that each board reaches. */
export function stretches(length: number, longest: number, places: readonly number[]): number[] {
  const out: number[] = [];
  let from = 0;
  while (length - from > longest + 1e-6) {
    const to = places.filter((p) => p > from + 1e-6 && p <= from + longest + 1e-6 && p < length - 1e-6).at(-1);
    if (to === undefined) break;
    out.push(to - from);
    from = to;
  }
  out.push(length - from);
  return out;
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

function piecesOfMember(m: Member, spec: StockSpec, structure: Structure): LooseCut[] {
  const { plies } = m.section;
  const longest = Math.max(...spec.lengths) - spec.trim;
  const runs = stretches(m.length, longest, joinPlaces(m, structure));
  const out: LooseCut[] = [];
  for (let ply = 1; ply <= plies; ply++) {
    for (const [i, length] of runs.entries()) {
      const words = [
        ...(plies > 1 ? [`ply ${ply} of ${plies}`] : []),
        ...(runs.length > 1 ? [`part ${i + 1} of ${runs.length}, joined over a tail`] : []),
      ];
      const id = `${m.id}${plies > 1 ? `.${ply}` : ''}${runs.length > 1 ? LETTERS[i % 26] : ''}`;
      out.push({
        spec,
        phase: PHASE[m.role],
        cut: { id, part: m.id, mark: m.mark, what: words.join(', '), length },
      });
    }
  }
  return out;
}

export function memberCuts({ structure, buying }: TakeoffInput): LooseCut[] {
  const members = structure.members.filter(isCut);
  const longest = Math.max(0, ...members.map((m) => m.length));
  return members.flatMap((m) => piecesOfMember(m, specOf(m.section, buying, longest), structure));
}
