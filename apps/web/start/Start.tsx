import { useState } from 'react';
import { Field } from '../fields/Field.js';
import { valueAt } from '../fields/schema.js';
import { useDesk } from '../store/desk.js';
import { showSheet, useProject } from '../store/project.js';
import { Finding } from './Finding.js';
import { MeasuringSheet } from './MeasuringSheet.js';
import { CHAPTERS, type Chapter } from './questions.js';
import { SixQuestions } from './SixQuestions.js';

const turn = (sheet: string): void => {
  const known = useProject.getState().summary?.index.some((s) => s.id === sheet);
  if (!known) return;
  useDesk.setState({ sheet, main: 'sheets' });
  void showSheet(sheet);
};

/** Questions in the order a person measures; every answer shows at once in the sheet beside. */
export function Start() {
  const [open, setOpen] = useState('six');
  const show = (id: string, sheet: string): void => {
    setOpen(open === id ? '' : id);
    if (open !== id) turn(sheet);
  };
  return (
    <div className="start">
      <Section
        id="six"
        n={1}
        title="Can a cover be had here?"
        about="Six questions before anything else."
        open={open === 'six'}
        toggle={() => show('six', 'C-101')}
      >
        <SixQuestions />
        <Next to={() => show('job', 'G-001')} />
      </Section>
      {CHAPTERS.map((c, i) => (
        <ChapterSection
          key={c.id}
          chapter={c}
          n={i + 2}
          open={open === c.id}
          toggle={() => show(c.id, c.sheet)}
          next={CHAPTERS[i + 1] && (() => show(CHAPTERS[i + 1]!.id, CHAPTERS[i + 1]!.sheet))}
        />
      ))}
      <Finding />
      <MeasuringSheet />
    </div>
  );
}

function Section(p: {
  id: string;
  n: number;
  title: string;
  about: string;
  open: boolean;
  toggle: () => void;
  left?: number;
  children: React.ReactNode;
}) {
  return (
    <section className={p.open ? 'chapter open' : 'chapter'}>
      <h3>
        <button type="button" aria-expanded={p.open} onClick={p.toggle}>
          <span className="n">{p.n}</span> {p.title}
          {p.left !== undefined && p.left > 0 && <span className="left">{p.left} open</span>}
        </button>
      </h3>
      {p.open && (
        <div className="chapter-body">
          <p className="quiet">{p.about}</p>
          {p.children}
        </div>
      )}
    </section>
  );
}

function ChapterSection({
  chapter,
  n,
  open,
  toggle,
  next,
}: {
  chapter: Chapter;
  n: number;
  open: boolean;
  toggle: () => void;
  next: (() => void) | undefined;
}) {
  const questions = useProject((p) => p.summary?.questions) ?? [];
  const tree = useProject((p) => p.summary?.tree);
  const left = questions.filter((q) =>
    chapter.asks.some((a) => q.path === a.path || q.path.startsWith(`${a.path}/`)),
  ).length;
  return (
    <Section id={chapter.id} n={n} title={chapter.title} about={chapter.about} open={open} toggle={toggle} left={left}>
      {chapter.asks.map((a) => {
        const v = valueAt(tree, a.path);
        const group = (typeof v === 'object' && v !== null && !('value' in v)) || v === undefined;
        return group && a.path !== '/basis/frost' ? (
          <details key={a.path}>
            <summary>{a.label}</summary>
            {a.where && <p className="quiet">{a.where}</p>}
            <Field path={a.path} label={a.label} />
          </details>
        ) : (
          <Field key={a.path} path={a.path} label={a.label} {...(a.where ? { help: a.where } : {})} />
        );
      })}
      {next && <Next to={next} />}
    </Section>
  );
}

const Next = ({ to }: { to: () => void }) => (
  <button type="button" className="main" onClick={to}>
    Next
  </button>
);
