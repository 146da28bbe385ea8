import { ANCHOR_SOURCE, HEIGHT_SOURCE } from '../layout/index.js';
import type { Stage, StageContext } from './contract.js';
import { jointTable, NOT_AS_DRAWN } from './parts.js';

const nowOf = ({ built, len }: StageContext, post: string): string => {
  const now = built?.posts.find((q) => q.post === post)?.now;
  return now === undefined ? '' : len(now);
};

/** Posts on their bases. */
export const posts: Stage = {
  title: 'Posts and bases',
  looks: 'owner',
  applies: ({ structure }) => structure.members.some((m) => m.role === 'post' && m.state === 'new'),
  body(ctx) {
    const { layout, project, len } = ctx;
    return {
      when: 'Concrete seven days old, tops of all piers measured, posts cut from one list.',
      tables: [
        {
          title: 'Post lengths as drawn: measure every pier first',
          heads: ['Post', 'Section', 'Beam underside', 'Pier top', 'Standoff', 'Length', 'As measured'],
          rows: layout.posts.map((p) => [
            p.post,
            p.section,
            len(p.underside),
            len(p.bears),
            p.standoff > 0 ? len(p.standoff) : 'in the ground',
            len(p.length),
            nowOf(ctx, p.post),
          ]),
        },
        ...jointTable(ctx, 'posts', 'Post bases'),
      ],
      atHand: ['Stake-out sheet', 'Maker’s sheets of the post bases', 'Level, and a straight board to test it'],
      items: [
        { id: 'cured', text: 'Concrete old enough: forms off after 24 to 48 hours, load after 7 days.' },
        { id: 'tops', text: 'Top of every pier read from the benchmark, twice.', measure: true },
        {
          id: 'anchors',
          text: 'Anchors within 1/4 in of their places; offsets and diagonals written down.',
          measure: true,
        },
        { id: 'treated', text: 'Treatment as drawn; cut ends brushed with preservative.' },
        {
          id: 'standoff',
          text: `Post ends ${len(project.choices.standoff)} off the concrete; every hole of the base filled with the fastener its maker names.`,
        },
        { id: 'plumb', text: 'Plumb both ways and braced to the ground before anything is set on them.' },
      ],
      failures: [
        { text: 'Base off its pier or its anchor, so that the post leans to reach the beam.', source: ANCHOR_SOURCE },
        { text: 'Posts cut to one length although the slab falls.', source: HEIGHT_SOURCE },
        {
          text: 'Posts held by gravity alone: no base with an uplift value.',
          source: 'inspectors’ forum on posts held by “gravity and friction”',
        },
        NOT_AS_DRAWN,
      ],
      cautions: [
        'A standing post without braces falls: two braces, staked, on each before the next is stood.',
        'Cutting treated wood: outdoors, dust mask, gloves, eye protection; wash before eating; never burn the scraps.',
      ],
    };
  },
};
