import { liftOf } from '../sequence/lifting.js';
import type { Stage, StageContext, StageTable } from './contract.js';
import { jointTable, NO_PAPERS, NOT_AS_DRAWN, PAPERS } from './parts.js';
import { BRACING, settingOf } from './setting.js';

const framed = ({ structure }: StageContext) =>
  structure.members.filter((m) => m.state === 'new' && m.strips.length > 0);

function pieces(ctx: StageContext): StageTable {
  const marks = [...new Set(framed(ctx).map((m) => m.mark))];
  return {
    title: 'Framing',
    heads: ['Mark', 'What', 'Count', 'Length', 'Weight each', 'Lift'],
    rows: marks.map((mark) => {
      const all = framed(ctx).filter((m) => m.mark === mark);
      const m = all[0]!;
      const lift = liftOf(m);
      const what = m.truss ? `truss, span ${ctx.len(m.truss.span)}` : m.section.label;
      return [mark, what, String(all.length), ctx.len(m.length), `${Math.round(lift.pounds)} lb`, lift.words];
    }),
  };
}

/** Trusses or rafters, set and braced. */
export const roofFraming: Stage = {
  title: 'Trusses or rafters, and bracing',
  looks: 'inspector',
  applies: (ctx) => framed(ctx).length > 0,
  body(ctx) {
    const trusses = framed(ctx).flatMap((m) => (m.truss ? [m.truss] : []));
    const spacing = [...new Set(ctx.project.cover.roofs.map((r) => ctx.len(r.framing.spacing)))].join(', ');
    const overlays = ctx.structure.overlays ?? [];
    return {
      when: 'Roof frame set, tied and braced, nothing sheathed over that must be seen.',
      tables: [
        pieces(ctx),
        ...(trusses.length > 0
          ? [
              {
                title: 'Setting tolerances',
                heads: ['What', 'At most', 'By'],
                rows: settingOf(trusses, ctx.len).map((t) => [t.what, t.most, t.source]),
              },
            ]
          : []),
        ...(overlays.length > 0
          ? [
              {
                title: 'On top of the old roof',
                heads: ['Roof', 'Valleys', 'Fill rafters', 'Ridge from the old eave'],
                rows: overlays.map((o) => [
                  o.roof,
                  o.valleys.map((v) => `${v.mark} ${ctx.len(v.length)}`).join(', '),
                  `${o.fills.length} pairs`,
                  ctx.len(o.head),
                ]),
              },
            ]
          : []),
        ...jointTable(ctx, 'roof-framing', 'Ties and hangers'),
      ],
      atHand: [
        ...PAPERS,
        ...(trusses.length > 0
          ? ['Sealed truss drawings and the layout, on the site', 'The plant’s bracing sheet']
          : []),
      ],
      items: [
        { id: 'marks', text: 'Marks, count and orientation as on the framing plan; bearings on the beams as drawn.' },
        { id: 'spacing', text: `Spacing ${spacing} on center.`, measure: true },
        { id: 'plumb', text: 'Straight and plumb within the table.', measure: true },
        {
          id: 'ties',
          text: 'A tie at each bearing as in the table, every hole filled; it holds the roof down in the wind.',
        },
        {
          id: 'bracing',
          text:
            trusses.length > 0
              ? 'Permanent bracing of webs and bottom chords as on the sealed sheets; it stays.'
              : 'Rafters blocked or held upright at their bearings.',
        },
        ...(overlays.length > 0
          ? [
              {
                id: 'old-roof',
                text: 'Old covering off to the sheathing under the fill; the old sheathing stays, or the old trusses lose their bracing.',
              },
              {
                id: 'fill',
                text: 'Valley plates and fill rafters as on the tie-in sheets, each fill over old framing; nothing of the old framing cut.',
              },
              { id: 'dry', text: 'Tarp at hand: the old roof is open until the new one is papered.' },
            ]
          : []),
        { id: 'cuts', text: 'No member cut, notched, drilled or mended without the designer’s written answer.' },
      ],
      failures: [
        NO_PAPERS,
        {
          text: 'Ties missing or half nailed; uplift forgotten until the inspector asks.',
          source: 'framing and wind checklists',
        },
        {
          text: 'Labels in the field differ from the permit’s truss layout.',
          source: 'Sonoma County CA, deferred submittals',
        },
        { text: 'Damaged or cut trusses without a repair drawing.', source: 'association job-site checklist' },
        NOT_AS_DRAWN,
      ],
      cautions:
        trusses.length > 0
          ? BRACING
          : ['Work from a scaffold or platform, not from the beams. Rafters are tied before anyone leans on them.'],
    };
  },
};
