import type { PostSpec } from '../../project/model.js';
import { SHORTEST_POST } from '../constants.js';
import { type Ground, slabAt, surfaceAt } from '../ground.js';
import { error, token } from '../issues.js';
import { type BeamPlan, type Kit, onBeam } from '../kit.js';
import type { Footing, Member } from '../model.js';
import { inches } from '../text.js';
import { footOf } from './foot.js';
import { footingShape } from './footings/registry.js';

export interface PostPart {
  readonly member: Member;
  readonly footing: Footing;
}

/** A post with its footing: from the standoff base on the concrete at this very point up to the beam's underside. */
export function placePost(
  spec: PostSpec,
  plan: BeamPlan,
  underside: number,
  ground: Ground,
  kit: Kit,
): PostPart | undefined {
  const { choices } = kit.project;
  const at = onBeam(plan, spec.at);
  const section = kit.section(spec.section, `${spec.path}/section`);
  const choice = Object.hasOwn(choices.footings, spec.footing) ? choices.footings[spec.footing] : undefined;
  const footingPath = `/choices/footings/${token(spec.footing)}`;
  if (choice === undefined) {
    kit.issues.push(
      error('footing-unknown', `${spec.path}/footing`, 'No footing of this name is listed under choices.', {
        subject: spec.mark,
        found: spec.footing,
        expected: `one of ${Object.keys(choices.footings).join(', ')}`,
      }),
    );
    return undefined;
  }
  const surface = surfaceAt(ground, at);
  if (section === undefined) return undefined;
  const shape = footingShape(choice, surface, { post: section, slab: slabAt(ground, at) });
  if ('code' in shape) {
    const { code, key, message, found, expected } = shape;
    kit.issues.push(
      error(code, `${footingPath}/${key}`, message, { subject: spec.footingMark, found: inches(found), expected }),
    );
    return undefined;
  }

  const bottom = shape.embedded?.foot ?? shape.top + choices.standoff;
  const length = underside - bottom;
  if (!(length >= SHORTEST_POST)) {
    kit.issues.push(
      error(
        'post-too-short',
        spec.path,
        `Between its base and beam ${plan.line.mark} the post would be ${inches(length)} long.`,
        {
          subject: spec.mark,
          found: inches(length),
          expected: `${inches(SHORTEST_POST)} or more: a higher bearing or a lower surface`,
        },
      ),
    );
    return undefined;
  }
  return {
    member: {
      id: spec.mark,
      mark: spec.mark,
      role: 'post',
      section,
      start: { ...at, z: bottom },
      end: { ...at, z: underside },
      // The width of the section lies along the beam, its depth across.
      up: { x: -plan.dir.y, y: plan.dir.x, z: 0 },
      length,
      state: 'new',
      strips: [],
      notch: 0,
      cuts: ['square both ends'],
      unbraced: { top: length, bottom: length },
      ...footOf(spec, bottom, surface, kit),
      path: spec.path,
    },
    footing: {
      id: spec.footingMark,
      mark: spec.footingMark,
      kind: choice.kind,
      at,
      surface,
      ...shape,
      ...('slabHolds' in choice && choice.slabHolds ? { slabHolds: true } : {}),
      fc: choice.fc,
      steel: choice.steel,
      choice: spec.drawnFooting ?? spec.footing,
      path: footingPath,
    },
  };
}
