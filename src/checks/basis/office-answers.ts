/** What only the building department can say must be said before a set is issued. */
import type { Check } from '../contract.js';
import { measured, notEvaluated } from '../finding.js';

const CLAUSE = 'authority having jurisdiction';

export const officeAnswers: Check = {
  id: 'office-answers',
  title: 'Answers from the building office',
  subjects: ({ project }) =>
    project.questions.length === 0
      ? [{ id: 'basis', path: '/basis' }]
      : project.questions.map((q) => ({ id: q.path, path: q.path })),
  run(subject, { project }, rec) {
    const question = project.questions.find((q) => q.path === subject.path);
    if (question) {
      return notEvaluated(CLAUSE, `Ask the office: ${question.text} Meanwhile ${question.meanwhile} is used.`);
    }
    return measured(
      {
        demand: 0,
        capacity: 1,
        unit: 'open questions',
        clause: CLAUSE,
        formula: 'open questions ≤ 0',
        remedy: '',
      },
      rec,
    );
  },
};
