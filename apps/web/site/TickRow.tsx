import { useEffect, useState } from 'react';
import type { StageCard, StageItem } from '../../../src/index.js';
import { NoteField } from './NoteField.js';
import { note, today } from './useWork.js';

type InspectedItem = StageCard['log'][number]['items'][number];

/** What the log has of a line: a later visit over an earlier one. */
export const filledIn = (card: StageCard, id: string): InspectedItem | undefined =>
  card.log.flatMap((v) => v.items).findLast((i) => i.item === id);

/** A line of a card: a box to tick with a glove on, and what was measured or seen. */
export function TickRow({ card, item }: { readonly card: StageCard; readonly item: StageItem }) {
  const kept = filledIn(card, item.id);
  const [done, setDone] = useState(kept?.done ?? false);
  useEffect(() => setDone(kept?.done ?? false), [kept?.done]);
  const write = (set: { done?: boolean; measured?: string; note?: string; photo?: string }, words: string) =>
    note(`${card.title}: ${words}`, { what: 'item', stage: card.id, item: item.id, today: today(), set });
  const tick = async (): Promise<void> => {
    setDone(!done);
    if (!(await write({ done: !done }, done ? `${item.id} open again` : `${item.id} done`))) setDone(done);
  };
  const said = [kept?.note, kept?.photo && `photo ${kept.photo}`].filter(Boolean).join(' · ');
  return (
    <li className={done ? 'tick done' : 'tick'}>
      <label className="tick-box">
        <input type="checkbox" checked={done} onChange={() => void tick()} data-item={`${card.id}/${item.id}`} />
        <span>{item.text}</span>
      </label>
      {item.measure && (
        <NoteField
          label="Measured or read"
          about={item.text}
          value={kept?.measured ?? ''}
          onWrite={(measured) => write({ measured }, `${item.id} measured`)}
        />
      )}
      <details className="more">
        <summary>{said === '' ? 'Note or photo' : said}</summary>
        <NoteField
          label="Note"
          about={item.text}
          value={kept?.note ?? ''}
          onWrite={(text) => write({ note: text }, `note on ${item.id}`)}
        />
        <NoteField
          label="Name of the photo"
          about={item.text}
          placeholder="f3-bottom.jpg"
          value={kept?.photo ?? ''}
          onWrite={(photo) => write({ photo }, `photo of ${item.id}`)}
        />
      </details>
    </li>
  );
}
