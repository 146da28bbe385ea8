/** What offices ask of a submittal and where this set shows it: the reviewer's own list, answered before it is asked. */
import { NO_SUBMITTAL } from '../../project/index.js';
import {
  askedText,
  type CompletenessRow,
  completeness,
  foundText,
  OFFICE_LIST,
  OFFICES_READ,
} from '../../review/completeness/index.js';
import type { Block } from '../annotate/index.js';
import type { SheetBody, SheetContext, SheetKind } from './contract.js';
import { flowSheets } from './parts.js';

function draw(ctx: SheetContext): SheetBody[] {
  const { project, structure, results } = ctx.input;
  const sheets = ctx.drawn;
  const rows = completeness({ sheets, project, structure, results });
  const { office } = (project.submittal ?? NO_SUBMITTAL).officeChecklist;
  const table = (group: CompletenessRow['group']): Block => ({
    kind: 'table',
    title: group,
    columns: [
      { head: 'Asked for', grow: true },
      { head: 'By', align: 'right' },
      { head: 'Where', max: 40 * ctx.style.note },
    ],
    rows: rows.filter((r) => r.group === group).map((r) => [r.item, askedText(r), foundText(r, sheets.length)]),
  });
  const groups = [...new Set(rows.map((r) => r.group))];
  const blocks: Block[] = [
    {
      kind: 'para',
      text: `${office === '' ? 'This office’s own list was not entered.' : `List of ${office}.`} Rows are the union of what ${OFFICES_READ} published lists of building offices ask; “By” says how many of them ask for it, at least. A row that no sheet shows says why, or is a question for the office.`,
    },
    ...groups.map(table),
  ];
  return flowSheets(ctx, {
    title: OFFICE_LIST,
    blocks,
    columns: 2,
    layer: 'G-ANNO-SCHD',
  });
}

export const officeList: SheetKind = {
  title: OFFICE_LIST,
  discipline: 'G',
  lists: true,
  needed: () => true,
  draw,
};
