import type { Overlay } from '../model.js';
import type { WrittenCover } from '../schema/cover.js';
import type { Notebook } from './notebook.js';

type Written = NonNullable<Extract<WrittenCover['roofs'][number], { kind: 'gable' }>['meetsHouse']>;

const NOTHING = { value: 0, shown: 'nothing' };

/** The overlay of one roof; each part of the statement that is not known becomes a question. */
export function completeOverlay(
  w: Written | undefined,
  mark: string,
  at: string,
  note: Notebook,
): { readonly meetsHouse?: Overlay } {
  if (w === undefined) return {};
  const { statement, ...rest } = w;
  const path = `${at}/meetsHouse/statement`;
  if (statement === undefined) {
    note.ask(
      path,
      `May the house roof under ${mark} carry it, by whose statement? Needed: added dead load, uplift, load where a valley plate crosses a rafter, side load.`,
      'nothing',
    );
    return { meetsHouse: rest };
  }
  return {
    meetsHouse: {
      ...rest,
      statement: {
        fastening: statement.fastening,
        rafterToPlate: statement.rafterToPlate,
        rafterToRidge: statement.rafterToRidge,
        ridgeToFrame: statement.ridgeToFrame,
        ...(statement.thrust === undefined
          ? {}
          : {
              thrust: note.office(statement.thrust, `${path}/thrust`, {
                ...NOTHING,
                question: `How much outward push of one fill rafter of ${mark} may its seat on the house roof be given?`,
              }),
            }),
        down: note.office(statement.down, `${path}/down`, {
          ...NOTHING,
          question: `How much dead load may the house roof under ${mark} be given?`,
        }),
        up: note.office(statement.up, `${path}/up`, {
          ...NOTHING,
          question: `How much uplift of ${mark} may the house roof be given?`,
        }),
        point: note.office(statement.point, `${path}/point`, {
          ...NOTHING,
          question: `How much may a valley plate of ${mark} put on one old rafter or truss?`,
        }),
        side: note.office(statement.side, `${path}/side`, {
          value: false,
          shown: 'no',
          question: `May the house take the side load of ${mark} through the joined sheathing?`,
        }),
      },
    },
  };
}
