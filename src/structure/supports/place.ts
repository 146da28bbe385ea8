import type { CoverRoof } from '../../project/model.js';
import { MEETS } from '../constants.js';
import type { Framed, Seat } from '../framing/contract.js';
import type { Ground } from '../ground.js';
import { error, warning } from '../issues.js';
import type { Kit } from '../kit.js';
import type { RoofLayers } from '../layers.js';
import type { Footing, Member } from '../model.js';
import type { Profile } from '../roofs/contract.js';
import { feet } from '../text.js';
import { type BeamPart, placeBeam } from './beams.js';
import { type EndPart, placeEnds } from './ends.js';
import { placeLedger } from './ledgers.js';
import { type PostPart, placePost } from './posts.js';
import { checkSharedPosts } from './shared-posts.js';

export interface LaidRoof {
  readonly roof: CoverRoof;
  readonly profile: Profile;
  readonly framed: Framed;
  readonly layers: RoofLayers;
  readonly trim: { readonly members: readonly Member[]; readonly seats: readonly Seat[] } | undefined;
}

export interface Supports {
  readonly members: readonly Member[];
  readonly footings: readonly Footing[];
  readonly beamParts: ReadonlyMap<string, readonly BeamPart[]>;
  readonly postParts: ReadonlyMap<string, PostPart>;
  /** Ends of each beam line that the house holds. */
  readonly ends: ReadonlyMap<string, readonly EndPart[]>;
}

interface Height {
  readonly top: number;
  readonly spacing: number;
}

/** Height of every beam and ledger from the roofs on it. Two roofs on one support must agree. */
function heightsOf(roofs: readonly LaidRoof[], kit: Kit): Map<string, Height> {
  const heights = new Map<string, Height>();
  for (const { roof, framed } of roofs) {
    for (const [part, top] of framed.tops) {
      const known = heights.get(part);
      if (known && Math.abs(known.top - top) > MEETS) {
        kit.issues.push(
          error(
            'beam-at-two-heights',
            roof.path,
            `This roof wants the top of ${part} at another height than the roof before it.`,
            {
              subject: part,
              found: feet(top),
              expected: feet(known.top),
            },
          ),
        );
      }
      heights.set(part, { top: known?.top ?? top, spacing: Math.max(known?.spacing ?? 0, roof.framing.spacing) });
    }
  }
  return heights;
}

export function placeSupports(roofs: readonly LaidRoof[], ground: Ground, kit: Kit): Supports {
  const heights = heightsOf(roofs, kit);
  const beams: Member[] = [];
  const posts: Member[] = [];
  const footings: Footing[] = [];
  const beamParts = new Map<string, BeamPart[]>();
  const postParts = new Map<string, PostPart>();
  const ends = new Map<string, readonly EndPart[]>();

  const ledgers: Member[] = [];
  for (const [mark, plan] of kit.ledgers) {
    const height = heights.get(mark);
    if (height) ledgers.push(placeLedger(plan, height.top, height.spacing));
    else unloaded(mark, plan.spec.path, roofs, kit);
  }
  for (const [mark, plan] of kit.beams) {
    const height = heights.get(mark);
    if (height === undefined) {
      unloaded(mark, plan.line.path, roofs, kit);
      continue;
    }
    const parts = placeBeam(plan, height, kit);
    beamParts.set(mark, parts);
    beams.push(...parts.map((p) => p.member));
    for (const spec of plan.line.posts) {
      const part = placePost(spec, plan, height.top - plan.section.depth, ground, kit);
      if (part === undefined) continue;
      postParts.set(spec.mark, part);
      posts.push(part.member);
      footings.push(part.footing);
    }
    const held = placeEnds(plan, height.top - plan.section.depth, ground, kit);
    ends.set(mark, held);
    posts.push(...held.flatMap((e) => e.post ?? []));
    footings.push(...held.flatMap((e) => e.footing ?? []));
  }
  checkSharedPosts({ beamParts, postParts }, kit);
  return { members: [...ledgers, ...beams, ...posts], footings, beamParts, postParts, ends };
}

/** A support no roof names has no height. Silent while some roof could not be laid out: its reason is told already. */
function unloaded(mark: string, path: string, roofs: readonly LaidRoof[], kit: Kit): void {
  if (roofs.length < kit.project.cover.roofs.length) return;
  kit.issues.push(
    warning('support-carries-nothing', path, `No roof bears on ${mark}: it is left out.`, { subject: mark }),
  );
}
