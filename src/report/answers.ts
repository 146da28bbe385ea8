/** One answer letter that lists every comment of the reviewers with the sheet and place where it was met. */
import type { ReviewComment } from '../project/model.js';

export interface Answer {
  readonly comment: ReviewComment;
  /** What is still wrong with the answer; empty when it can go out. */
  readonly open: string;
}

interface Known {
  readonly id: string;
  readonly title: string;
}

/** An office sends back an answer that names no sheet, so each comment must name one that is in the set. */
export function answersOf(comments: readonly ReviewComment[], sheets: readonly Known[]): Answer[] {
  return comments.map((comment) => ({
    comment,
    open:
      comment.answer === ''
        ? 'not answered'
        : comment.sheet === ''
          ? 'names no sheet'
          : sheets.some((s) => s.id === comment.sheet)
            ? ''
            : `${comment.sheet} is not in the set`,
  }));
}

export const whereText = (a: Answer, sheets: readonly Known[]): string => {
  const { sheet, place } = a.comment;
  const title = sheets.find((s) => s.id === sheet)?.title;
  return [sheet && title ? `${sheet} ${title}` : sheet, place].filter(Boolean).join(': ') || 'no sheet named';
};

export interface LetterHead {
  readonly title: string;
  readonly address: string;
  readonly parcel: string;
  readonly date: string;
  readonly preparedBy: string;
}

const escaped = (text: string): string => text.replace(/([\\`*_[\]<>#|])/g, '\\$1');

/** The letter in Markdown; a plain text reader shows it as well. */
export function answerLetter(head: LetterHead, answers: readonly Answer[], sheets: readonly Known[]): string {
  const open = answers.filter((a) => a.open !== '');
  const lines = [
    `# Answer to review comments`,
    '',
    escaped(`${head.title}, ${head.address}, parcel ${head.parcel}`),
    '',
    escaped(`${head.date}, ${head.preparedBy}`),
    '',
    `${answers.length} ${answers.length === 1 ? 'comment' : 'comments'}${open.length > 0 ? `, ${open.length} still open` : ', all answered'}. Changes on the sheets are clouded.`,
  ];
  for (const a of answers) {
    const { number, from, date, text, answer } = a.comment;
    const who = [from, date].filter(Boolean).join(', ');
    lines.push(
      '',
      `## ${escaped(number)}${who ? ` (${escaped(who)})` : ''}`,
      '',
      `> ${escaped(text)}`,
      '',
      `Answer: ${escaped(answer || 'none yet')}`,
      '',
      `Where: ${escaped(whereText(a, sheets))}${a.open ? ` – STILL OPEN: ${a.open}` : ''}`,
    );
  }
  return `${lines.join('\n')}\n`;
}
