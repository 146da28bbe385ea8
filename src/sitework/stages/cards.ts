import { formatLength } from '../../base/quantity/index.js';
import type { StageId } from '../../project/model.js';
import { layoutOf } from '../layout/index.js';
import type { StageCard, StageContext, StageInput } from './contract.js';
import { STAGES } from './registry.js';

/** The cards of every stage this project has, in the order of the work, with what the log says of each. */
export function stageCards(input: StageInput): readonly StageCard[] {
  const { units } = input.project.job;
  const ctx: StageContext = {
    ...input,
    layout: layoutOf(input.structure),
    len: (inches) => formatLength(inches, { units }),
  };
  return (Object.keys(STAGES) as StageId[])
    .filter((id) => STAGES[id].applies(ctx))
    .map((id) => {
      const stage = STAGES[id];
      const log = (input.project.log.inspections ?? []).filter((i) => i.stage === id);
      return {
        id,
        title: stage.title,
        looks: stage.looks,
        ...stage.body(ctx),
        log,
        result: log.at(-1)?.result ?? 'open',
      };
    });
}
