/**
 * What the cover asks of the existing house, place by place: each thing that had to be verified, its force, and whether
 * somebody has. Only the house's owner and the inspector can see these; the program says what to look for and with what load.
 */
import type { Recorder } from '../../base/trace.js';
import type { Cladding, Office, Opening } from '../../project/model.js';
import { fromWall } from '../../structure/describe.js';
import { assessHeader, type HeaderLoad, type HeaderShare } from './header.js';
import {
  downOn,
  type HousePlace,
  housePlaces,
  needsText,
  type PlaceSource,
  recordSpread,
  type Spread,
} from './places.js';

export type FactState =
  /** Seen by someone, who is named. */
  | 'verified'
  /** Worked out from what was seen. */
  | 'worked-out'
  /** Nobody has looked: the set waits for it. */
  | 'open'
  /** Looked at on site before work and shown to the inspector; the set does not wait. */
  | 'on-site'
  /** May not be done. */
  | 'refused'
  /** Needs a licensed professional. */
  | 'outside';

export interface HouseFact {
  readonly place: string;
  /** What to look for: `floor band 1-1/2 in thick behind the sheathing, whole length`. */
  readonly what: string;
  /** What it must take, in words; empty when the question is not one of force. */
  readonly takes: string;
  readonly state: FactState;
  /** Who said so, or what to do. */
  readonly note: string;
  /** Demand over capacity where it was worked out. */
  readonly ratio: number;
  /** What the ratio is of, where it was worked out. */
  readonly governs?: HeaderShare | undefined;
  readonly path: string;
}

const VENEER: ReadonlySet<Cladding> = new Set<Cladding>(['brick-veneer', 'stone-veneer']);

/** Stretch of wall that shares a load out among its studs, inches. Common practice, no source. */
const STRETCH = 48;

/** Answered with yes by a named somebody. */
const given = (v: Office<boolean>): boolean => v.state === 'given' && v.value && v.from !== '';
const words = (s: string): string => s.replaceAll('-', ' ');

interface Draft {
  readonly what: string;
  readonly state: FactState;
  readonly takes?: string;
  readonly note?: string;
  readonly ratio?: number;
  readonly governs?: HeaderShare;
  readonly path?: string;
}

/** A question somebody answers with yes. */
const asked = (what: string, v: Office<boolean>, takes: string, todo: string): Draft =>
  given(v)
    ? { what, takes, state: 'verified', note: v.from, path: v.path }
    : { what, takes, state: 'open', note: v.value && v.from === '' ? 'say who saw it' : todo, path: v.path };

export function factsAt(ctx: PlaceSource, place: HousePlace, rec?: Recorder): readonly HouseFact[] {
  const drafts = [
    ...cladding(place),
    ...(place.kind === 'ledger' ? ledgerFacts(ctx, place, rec) : endFacts(place)),
    ...headers(ctx, place, rec),
  ];
  return drafts.map((d) => ({ takes: '', note: '', ratio: 0, ...d, path: d.path || place.path, place: place.id }));
}

/** Every place's facts, for the sheets. */
export const houseFacts = (ctx: PlaceSource): readonly HouseFact[] => housePlaces(ctx).flatMap((p) => factsAt(ctx, p));

function cladding({ house, kind }: HousePlace): Draft[] {
  const clad = words(house.build.cladding);
  if (kind !== 'beam-on-post' && VENEER.has(house.build.cladding))
    return [
      { what: `${clad} carries only itself`, state: 'refused', note: 'set posts of its own in front of the wall' },
    ];
  if (house.build.cladding === 'concrete-masonry')
    return [
      {
        what: 'masonry wall: anchors in it, or an opening cut into it',
        state: 'outside',
        note: 'a licensed professional designs them, or posts stand in front of the wall',
      },
    ];
  return [
    {
      what: `${clad} cut away to the sheathing, sheathing sound, water barrier lapped over the new flashing`,
      state: 'on-site',
      note: 'before fastening; keep open for the inspector',
    },
  ];
}

function ledgerFacts(ctx: PlaceSource, place: HousePlace, rec?: Recorder): Draft[] {
  const f = place.ledger?.fastening;
  const takes = `${needsText(place.needs)} at each place`;
  const build = place.house.build;
  if (!f)
    return [
      {
        what: 'fasteners of the ledger and the wood they go into',
        takes,
        state: 'open',
        note: 'give "fastening" of this ledger',
      },
    ];
  const what =
    f.into === 'studs'
      ? `${build.studSize} studs at ${build.studSpacing} in, ${f.framing.species}, one behind every place`
      : `floor band or blocking, ${f.framing.species}, ${f.framing.depth} in thick, whole length of the ledger`;
  const stretch = heaviest(ctx, place);
  if (rec && stretch) {
    rec.heading(`${place.id}: load on the wall under it`);
    recordSpread(ctx, place, stretch, `${STRETCH} in of wall, the heaviest`, place.path, rec);
  }
  return [
    asked(`${what}; no veneer, no cantilever, no fascia`, f.verified, takes, 'open the wall or see it from inside'),
    asked(
      'studs and plates under it down to the foundation',
      build.verified,
      `${Math.ceil(12 * (stretch?.even ?? 0))} lb per foot of wall`,
      'see how the wall is framed',
    ),
  ];
}

const REFUSED: Readonly<Record<string, string>> = {
  fascia: 'a fascia is trim and carries no beam',
  cantilever: 'a floor that runs out past the wall below carries no beam',
  band: 'a floor band carries no single beam: bring it down on a post or studs',
  'single-stud': 'one stud is no place for the end of a beam: add studs or a post down to the foundation',
  unknown: 'nobody knows what is there: open the wall',
};

function endFacts({ end, needs }: HousePlace): Draft[] {
  if (!end) return [];
  const takes = needsText(needs);
  const down = needs
    ? `${Math.ceil(needs.down.value)} lb down, ${Math.ceil(needs.up.value)} lb up`
    : 'forces not known';
  if (end.kind === 'on-wall') {
    const refused = REFUSED[end.into];
    if (refused)
      return [
        { what: `beam fixed to: ${words(end.into)}`, takes, state: 'refused', note: refused, path: `${end.path}/into` },
      ];
    return [
      asked(
        `${words(end.into)} behind the connector, sound, and its load path down to the foundation`,
        end.verified,
        takes,
        'open the wall at this place',
      ),
    ];
  }
  const side = needs
    ? `${Math.ceil(needs.along.value)} lb along the wall, ${Math.ceil(Math.max(needs.away.value, needs.against.value))} lb square to it`
    : takes;
  return [
    asked(
      `room for post ${end.mark} in the wall, nothing in the way; post tied to plates and sheathing`,
      end.verified,
      side,
      'open the wall at this place',
    ),
    end.foot.kind === 'foundation'
      ? asked(
          `foundation of the house under ${end.mark}, seen and sound`,
          end.foot.verified,
          down,
          'dig beside it or look from below',
        )
      : {
          what: `new footing ${end.foot.footingMark} under the wall without undermining the footing of the house`,
          takes: down,
          state: 'on-site',
          note: 'shore the wall before digging; inspector sees both footings',
        },
  ];
}

/** The four feet of wall that get most. */
function heaviest(ctx: PlaceSource, place: HousePlace): Spread | undefined {
  let most: Spread | undefined;
  for (const j of place.joints) {
    const { along } = fromWall(place.wall, j.at);
    const here = downOn(ctx, place, along, along + STRETCH);
    if (!most || here.even > most.even) most = here;
  }
  return most;
}

/** Openings under a place, whose headers get its load. */
function under(ctx: PlaceSource, place: HousePlace): readonly (readonly [Opening, HeaderLoad, Spread?])[] {
  const { wall, member, needs } = place;
  if (place.kind === 'beam-on-post' || !needs) return [];
  const low = member.start.z - member.section.depth / 2;
  const below = wall.openings.filter((o) => o.head <= low + 1e-6);
  if (place.kind === 'ledger') {
    const ends = [fromWall(wall, member.start).along, fromWall(wall, member.end).along].sort((p, q) => p - q);
    return below
      .filter((o) => o.offset < ends[1]! && o.offset + o.width > ends[0]!)
      .map((o) => {
        const spread = downOn(ctx, place, o.offset, o.offset + o.width);
        return [o, { even: spread.even, point: 0, at: 0 }, spread] as const;
      });
  }
  const joint = place.joints[0];
  const along = joint ? fromWall(wall, joint.at).along : Number.NaN;
  const half = member.section.width / 2;
  return below
    .filter((o) => along + half > o.offset && along - half < o.offset + o.width)
    .map((o) => [o, { even: 0, point: needs.down.value, at: along - o.offset }] as const);
}

const headers = (ctx: PlaceSource, place: HousePlace, rec?: Recorder): Draft[] =>
  under(ctx, place).map(([o, load, spread]): Draft => {
    if (rec && spread) {
      rec.heading(`${place.id}: load on the header of ${o.mark}`);
      recordSpread(ctx, place, spread, `the ${o.width} in opening ${o.mark}`, o.path, rec);
    }
    const a = assessHeader(o, load, rec);
    const what = a.text;
    const path = o.header?.path ?? o.path;
    if (a.state === 'verified') return { what, state: 'verified', path };
    if (a.state === 'unknown')
      return {
        what,
        state: 'outside',
        note: 'a licensed professional, or whoever can judge header and jacks, must verify them: give "header" of this opening',
        path,
      };
    return a.ratio <= 1 + 1e-9
      ? { what, state: 'worked-out', note: 'size as seen', ratio: a.ratio, governs: a.governs, path }
      : {
          what,
          state: 'refused',
          note: 'the header is too weak: strengthen it or move the place',
          ratio: a.ratio,
          path,
        };
  });
