import { expect, it } from 'vitest';
import { readComments } from './comments.js';

it('reads a list, with what is left out empty', () => {
  const r = readComments(
    '[\n // from the letter\n { "number": "1", "text": "Show it.", "answer": "Shown.", "sheet": "S-601" },\n]',
  );
  expect(r.issues).toEqual([]);
  expect(r.value).toEqual([
    {
      number: '1',
      from: '',
      date: '',
      text: 'Show it.',
      answer: 'Shown.',
      sheet: 'S-601',
      place: '',
      path: '/submittal/comments/0',
    },
  ]);
});

it.each([
  ['{ "number": "1" }', 'wrong-type', undefined],
  ['[\n{ "number": "1", "text": "x", "anwser": "y" }]', 'unknown-key', 2],
  ['[\n{ "number": "1", "text": 7, "answer": "y" }]', 'wrong-type', 2],
  ['[ { "number": "1" ', 'syntax', 1],
])('refuses %s', (text, code, line) => {
  const r = readComments(text);
  expect(r.value).toBeUndefined();
  expect(r.issues.map((i) => i.code)).toContain(code);
  if (line !== undefined) expect(r.issues.find((i) => i.code === code)!.line).toBe(line);
});
