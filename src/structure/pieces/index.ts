/**
 * Convex pieces of every part, for pictures: plans, elevations and sections are projections of these. Made on demand, so
 * that deriving the numbers does not pay for them. Faces look outward.
 */
import type { Project } from '../../project/model.js';
import type { Joint, Member, MemberRole, Piece, Structure } from '../model.js';
import { overlayPieces } from '../tie-in/pieces.js';
import { bracePieces } from './braces.js';
import { rafterPieces, trussPieces } from './framing.js';
import { groundPieces } from './ground.js';
import { housePieces } from './house.js';
import { surfacePieces } from './roof.js';
import { barPieces, footingPieces } from './supports.js';

type Shaper = (m: Member, joints: readonly Joint[]) => Piece[];

const truss: Shaper = (m, joints) => (m.truss ? trussPieces(m, m.truss, joints) : barPieces(m));

/** Plumb ends, like a rafter's; nothing is seated on it. */
const bargePieces: Shaper = (m) => rafterPieces(m, []);

const SHAPERS: Readonly<Record<MemberRole, Shaper>> = {
  rafter: rafterPieces,
  hip: rafterPieces,
  truss,
  'gable-truss': truss,
  ledger: barPieces,
  beam: barPieces,
  post: barPieces,
  strut: barPieces,
  brace: bracePieces,
  tie: barPieces,
  ridge: barPieces,
  fascia: barPieces,
  gutter: barPieces,
  blocking: barPieces,
  outlooker: barPieces,
  barge: bargePieces,
  // Placed over the house only: tie-in/pieces.ts.
  'fill-rafter': barPieces,
  'valley-plate': barPieces,
};

export function piecesOf(structure: Structure, project: Project): Piece[] {
  const seats = new Map<string, Joint[]>();
  for (const j of structure.joints) {
    // The upper part of a bearing is the one that is seated.
    if (j.kind === 'fascia-to-framing') continue;
    const list = seats.get(j.ties[0]!.part);
    if (list) list.push(j);
    else seats.set(j.ties[0]!.part, [j]);
  }
  return [
    ...groundPieces(structure, project),
    ...housePieces(structure),
    ...structure.footings.flatMap(footingPieces),
    ...structure.members.flatMap((m) => SHAPERS[m.role](m, seats.get(m.id) ?? [])),
    ...structure.surfaces.flatMap((s) => surfacePieces(s, structure, project)),
    ...(structure.overlays ?? []).flatMap(overlayPieces),
  ];
}
