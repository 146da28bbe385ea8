/**
 * Which checks must have been answered before a set of a given kind may be issued. This is data: a check missing from
 * the registry but named here makes the set preliminary, it never drops out silently.
 */
import type { Cover, FramingKind, Project, RoofKind } from '../project/model.js';

/** Asked of every cover. */
const EVERY: readonly string[] = [
  'office-answers',
  'load-range',
  'frame-solved',
  'load-balance',
  'load-path',
  'seismic',
  'lot-closure',
  'lot-coverage',
  'setback',
  'height-limit',
  'easement',
  'fire-separation',
  'covering-slope',
  'headroom',
  'slab-fall',
  'beam-bending',
  'beam-shear',
  'beam-combined',
  'beam-deflection-live',
  'beam-deflection-total',
  'beam-deflection-long-term',
  'joint-bearing',
  'joint-products',
  'ply-fastening',
  'post-slenderness',
  'post-stability',
  'post-bearing',
  'post-tension',
  'soil-bearing',
  'footing-uplift',
  'frost-depth',
  'footing-size',
  'footing-flexure',
  'footing-shear',
  'footing-overturning',
  'footing-sliding',
  'embedment',
  'pier-strength',
  'base-bearing',
  'anchor',
  'slab-post',
  'house-footing',
  'post-foot',
  'durability',
  'engineer-triggers',
  'wind-components',
  'sheathing-span',
  'sheathing-nails',
  'covering-uplift',
  'snow-drift',
  'snow-sliding',
  'snow-partial',
  'sway-x',
  'sway-y',
  'diaphragm',
  'diaphragm-chord',
  'heel-blocking',
  'house-tie',
  'house-path',
];

const BY_ATTACHMENT: Readonly<Record<Cover['attachment'], readonly string[]>> = {
  attached: [
    'wind-attached',
    'ledger-strength',
    'ledger-fasteners',
    'house-connection',
    'existing-building',
    'water-at-wall',
  ],
  'free-standing': [],
};

const BY_ROOF: Readonly<Record<RoofKind, readonly string[]>> = {
  gable: ['snow-unbalanced'],
  shed: [],
  hip: [
    'snow-unbalanced',
    'hip-bending',
    'hip-shear',
    'hip-deflection-live',
    'hip-deflection-total',
    'hip-notch',
    'hip-combined',
    'hip-deflection-long-term',
  ],
};

const RAFTERS: readonly string[] = [
  'rafter-bending',
  'rafter-shear',
  'rafter-notch',
  'rafter-combined',
  'rafter-deflection-live',
  'rafter-deflection-total',
  'rafter-deflection-long-term',
];

/** Asked where ties hold the feet of rafters. */
const TIED: readonly string[] = ['tie-combined', 'tie-slenderness', 'tie-heel'];

/** Asked where outlookers carry the rake. */
const OUTLOOKERS: readonly string[] = ['outlooker-bending', 'outlooker-shear'];

const BY_FRAMING: Readonly<Record<FramingKind, readonly string[]>> = {
  rafter: RAFTERS,
  'common-truss': ['truss-papers', 'truss-preliminary'],
  'scissor-truss': ['truss-papers', 'truss-preliminary', 'scissor-spread', 'scissor-thrust'],
};

/** What bends a post or joins it: asked where the cover has it, so that none of these is ever silent. */
const BENT_POSTS: readonly string[] = ['post-combined', 'post-shear'];
const BY_PART = {
  braces: ['brace-slenderness', 'brace-combined'],
  struts: ['strut-slenderness', 'strut-combined', 'strut-shear'],
  fixed: ['base-moment'],
} as const;

function ofPosts({ lateral, beams, struts = [] }: Cover): readonly string[] {
  const posts = beams.flatMap((b) => b.posts);
  const braced = posts.some((p) => (p.braces?.length ?? 0) > 0) || struts.some((s) => s.braces !== undefined);
  const held = posts.some((p) => p.base === 'fixed' || p.base === 'embedded');
  const systems = [lateral.x, lateral.y];
  const byPosts = systems.includes('knee-braces') || systems.includes('fixed-posts');
  return [
    ...(braced || held || byPosts || struts.length > 0 ? BENT_POSTS : []),
    ...(braced ? BY_PART.braces : []),
    ...(struts.length > 0 ? BY_PART.struts : []),
    ...(posts.some((p) => p.base === 'fixed') ? BY_PART.fixed : []),
  ];
}
/** Asked where the file states a habitable room of the house: the cover may take its light, its air or its way out. */
const ROOMS: readonly string[] = [
  'room-light',
  'room-air',
  'escape-path',
  'door-landing',
  'guard',
  'equipment-clearance',
];

/** Asked of roofs whose eaves carry a gutter. */
const GUTTERED: readonly string[] = ['gutter'];

/** Asked of a roof that goes on over the house. */
const OVERLAY: readonly string[] = [
  'overlay-rafter',
  'overlay-rafter-deflection',
  'overlay-load',
  'overlay-point',
  'overlay-thrust',
  'overlay-joints',
  'overlay-uplift',
  'overlay-side',
  'overlay-base',
  'overlay-water',
];

/** Answers worth printing that never keep a set from being issued by not being there. */
export const ADVISORY: ReadonlySet<string> = new Set(['patio-appendix', 'patio-receptacle', 'door-light']);

/** Mandatory checks of one kind of structure. */
export function mandatoryFor(
  attachment: Cover['attachment'],
  roofs: readonly {
    readonly kind: RoofKind;
    readonly framing: FramingKind;
    readonly gutter?: boolean;
    readonly tied?: boolean;
    readonly outlookers?: boolean;
    readonly overlay?: boolean;
  }[],
): ReadonlySet<string> {
  const ids = new Set([...EVERY, ...BY_ATTACHMENT[attachment]]);
  for (const roof of roofs) for (const id of [...BY_ROOF[roof.kind], ...BY_FRAMING[roof.framing]]) ids.add(id);
  if (roofs.some((r) => r.gutter)) for (const id of GUTTERED) ids.add(id);
  for (const id of roofs.some((r) => r.tied) ? TIED : []) ids.add(id);
  if (roofs.some((r) => r.outlookers)) for (const id of OUTLOOKERS) ids.add(id);
  if (roofs.some((r) => r.overlay)) for (const id of OVERLAY) ids.add(id);
  return ids;
}

export const mandatoryOf = (project: Project): ReadonlySet<string> =>
  new Set([
    ...mandatoryFor(
      project.cover.attachment,
      project.cover.roofs.map(({ kind, framing, finish, rakeFraming, ...r }) => ({
        kind,
        overlay: 'meetsHouse' in r && r.meetsHouse !== undefined,
        framing: framing.kind,
        gutter: finish.gutter,
        outlookers: rakeFraming !== undefined,
        tied: 'ties' in framing && framing.ties !== undefined,
      })),
    ),
    ...ofPosts(project.cover),
    ...(project.house.rooms.some((r) => r.use !== 'service') ? ROOMS : []),
  ]);

/** Everything any list names, for the test that each has an implementation. */
export const EVERY_MANDATORY: ReadonlySet<string> = new Set([
  ...EVERY,
  ...Object.values(BY_ATTACHMENT).flat(),
  ...Object.values(BY_ROOF).flat(),
  ...Object.values(BY_FRAMING).flat(),
  ...BENT_POSTS,
  ...Object.values(BY_PART).flat(),
  ...GUTTERED,
  ...ROOMS,
  ...TIED,
  ...OUTLOOKERS,
  ...OVERLAY,
]);
