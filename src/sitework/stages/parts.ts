/** Tables that several cards share. */
import type { JointDemand } from '../../checks/joints/demands.js';
import { servedBy } from '../../checks/joints/serving.js';
import type { StageId } from '../../project/model.js';
import { JOINT_WORDS } from '../../structure/joint-words.js';
import type { JointKind } from '../../structure/model.js';
import type { StageContext, StageTable, Told } from './contract.js';

export const NOT_READY: Told = {
  text: 'Not ready when the inspector comes, or nobody there: call only when every line of this card is ticked.',
  source: 'county list of inspection failures, Accomack VA; Johnston County NC',
};
export const NOT_AS_DRAWN: Told = {
  text: 'Not as on the approved plan. A change needs the office’s word before it is built.',
  source: 'Accomack VA; Napa CA; Skagit WA',
};
export const NO_PAPERS: Told = {
  text: 'Approved plans, truss drawings or beam data not at hand.',
  source: 'Accomack VA; Johnston County NC',
};

/** Papers of every inspection. */
export const PAPERS = ['Permit card, posted', 'Approved plans, the stamped set', 'This card, filled in'] as const;

const pounds = (d: JointDemand['down']): string => (d.value > 0 ? String(Math.ceil(d.value)) : '–');

function servedWords({ project }: StageContext, mark: string, kind: JointKind): string {
  const served = servedBy(project.choices, mark, kind);
  if (!served) return 'not chosen yet';
  if (served.by === 'connection') return 'calculated connection: see the joint schedule';
  const { product, count } = served.product;
  return count > 1 ? `(${count}) ${product}` : product;
}

/** The card that shows each kind of joint. Trim is nailed by the code's schedule and has no row. */
const SHOWN_AT: Readonly<Record<JointKind, StageId | undefined>> = {
  'post-to-footing': 'posts',
  'post-to-house': 'posts',
  'ledger-to-house': 'beams',
  'beam-to-post': 'beams',
  'beam-splice': 'beams',
  'beam-to-wall-post': 'beams',
  'beam-to-wall': 'beams',
  'strut-to-post': 'beams',
  'brace-to-beam': 'beams',
  'brace-to-post': 'beams',
  'truss-to-beam': 'roof-framing',
  'rafter-to-beam': 'roof-framing',
  'rafter-to-ledger': 'roof-framing',
  'rafter-to-ridge': 'roof-framing',
  'tie-to-rafter': 'roof-framing',
  'outlooker-to-frame': 'roof-framing',
  'jack-to-hip': 'roof-framing',
  'hip-to-beam': 'roof-framing',
  'hip-to-ridge': 'roof-framing',
  'fascia-to-framing': undefined,
};

/** Joints of one stage with what each must carry and what was chosen for it; no table without joints. */
export function jointTable(ctx: StageContext, stage: StageId, title: string): StageTable[] {
  const marks = [...new Set(ctx.structure.joints.filter((j) => SHOWN_AT[j.kind] === stage).map((j) => j.mark))];
  if (marks.length === 0) return [];
  return [
    {
      title,
      heads: ['Mark', 'Joint', 'Count', 'Down lb', 'Up lb', 'Side lb', 'With'],
      rows: marks.map((mark) => {
        const all = ctx.structure.joints.filter((j) => j.mark === mark);
        const { kind } = all[0]!;
        const d = ctx.demands.find((q) => q.mark === mark);
        const side = d && [d.alongX.value, d.alongY.value];
        const loads =
          d === undefined || !d.known
            ? ['?', '?', '?']
            : [
                pounds(d.down),
                pounds(d.up),
                side && Math.max(...side) > 0 ? String(Math.ceil(Math.max(...side))) : '–',
              ];
        return [mark, JOINT_WORDS[kind], String(all.length), ...loads, servedWords(ctx, mark, kind)];
      }),
    },
  ];
}
