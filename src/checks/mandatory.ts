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
  'post-foot',
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
];

const BY_ATTACHMENT: Readonly<Record<Cover['attachment'], readonly string[]>> = {
  attached: ['wind-attached', 'house-connection'],
  'free-standing': [],
};

const BY_ROOF: Readonly<Record<RoofKind, readonly string[]>> = {
  gable: ['snow-unbalanced'],
  shed: [],
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

const BY_FRAMING: Readonly<Record<FramingKind, readonly string[]>> = {
  rafter: RAFTERS,
  'common-truss': ['truss-papers'],
  'scissor-truss': ['truss-papers'],
};

/** Mandatory checks of one kind of structure. */
export function mandatoryFor(
  attachment: Cover['attachment'],
  roofs: readonly { readonly kind: RoofKind; readonly framing: FramingKind; readonly tied?: boolean }[],
): ReadonlySet<string> {
  const ids = new Set([...EVERY, ...BY_ATTACHMENT[attachment]]);
  for (const roof of roofs) for (const id of [...BY_ROOF[roof.kind], ...BY_FRAMING[roof.framing]]) ids.add(id);
  for (const id of roofs.some((r) => r.tied) ? TIED : []) ids.add(id);
  return ids;
}

export const mandatoryOf = (project: Project): ReadonlySet<string> =>
  mandatoryFor(
    project.cover.attachment,
    project.cover.roofs.map(({ kind, framing }) => ({
      kind,
      framing: framing.kind,
      tied: 'ties' in framing && framing.ties !== undefined,
    })),
  );

/** Everything any list names, for the test that each has an implementation. */
export const EVERY_MANDATORY: ReadonlySet<string> = new Set([
  ...EVERY,
  ...Object.values(BY_ATTACHMENT).flat(),
  ...Object.values(BY_ROOF).flat(),
  ...Object.values(BY_FRAMING).flat(),
  ...TIED,
]);
