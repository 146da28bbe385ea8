/** The stake-out bundle: plan, points, strings, diagonals, levels, post lengths, readings to take. */
import { formatLength } from '../../base/quantity/index.js';
import type { Vec2 } from '../../base/vec.js';
import type { Project } from '../../project/model.js';
import { type AsBuilt, SIGMA_SOURCE } from '../../sitework/asbuilt/index.js';
import { BOARD_SOURCE, HEIGHT_SOURCE, layoutOf } from '../../sitework/layout/index.js';
import type { Structure } from '../../structure/model.js';
import { northArrow, scaleBar, type TableRow } from '../annotate/index.js';
import { centeredViewport, chooseScale, type Primitive, SCALES, type Sheet, type Viewport } from '../ir/index.js';
import { PAPER_STYLE, PAPER_WIDTH, type Paper, type PaperData, papersOf } from '../papers/index.js';
import { asBuiltPaper, type SecondRun } from './as-built-paper.js';
import { stakeExtents, stakePlan } from './stake-plan.js';

const N = PAPER_STYLE.note;
/** Tallest plan that leaves the page its heading and foot. */
const TALLEST = 8.35;
/** Room above and below the boards: bubbles and dimension strings at most; running figures and scale. */
const ABOVE = 13 * N;
const BELOW = 17 * N;

export interface StakeInput {
  readonly project: Project;
  readonly structure: Structure;
  /** Angle of north from the house x axis, counter-clockwise; no arrow without it. */
  readonly north?: number | undefined;
  readonly built?: AsBuilt | undefined;
  readonly second?: SecondRun | undefined;
  /** False marks every page as preliminary. */
  readonly issuable?: boolean | undefined;
}

export const paperData = (project: Project, prefix: string, issuable = true): PaperData => ({
  prefix,
  ...(issuable ? {} : { banner: 'PRELIMINARY – NOT FOR PERMIT' }),
  project: project.job.title,
  address: project.job.address,
  date: project.job.date,
});

type Len = (inches: number) => string;

/** What was read of a pier's top, where it was: the column is for the pencil otherwise. */
function levelRead({ built }: StakeInput, footing: string, len: Len): string {
  const height = built?.points.find((p) => p.name === footing)?.height;
  return height ? len(height.level) : '';
}

function lengthNow({ built }: StakeInput, post: string, len: Len): string {
  const now = built?.posts.find((p) => p.post === post)?.now;
  return now === undefined ? '' : len(now);
}

/** Pages of the stake-out: the first is a scaled plan. */
export function stakeSheets(input: StakeInput): Sheet[] {
  const { project, structure } = input;
  const layout = layoutOf(structure);
  // Fractions in full: these pages are read outdoors, at letter size.
  const len = (v: number): string => formatLength(v, { units: project.job.units });
  const view = stakeExtents(layout);
  // Room beside the boards for the running figures, the strings' bubbles and the dimension strings.
  const room = { w: PAPER_WIDTH - 17 * N, h: TALLEST - ABOVE - BELOW };
  const scale = chooseScale(view, room, ['1/2', '3/8', '1/4', '3/16', '1/8', '1:10', '1:20', '1:30']) ?? SCALES['1:40'];
  const plan = stakePlan({ layout, structure, scale: scale.ratio, style: PAPER_STYLE, len });
  const height = view.h * scale.ratio + plan.above + BELOW;
  let placed: Viewport | undefined;
  const drawPlan = (at: Vec2, width: number): Primitive[] => {
    const box = { x: at.x + 4 * N, y: at.y - height + BELOW, w: width - 8 * N, h: height - plan.above - BELOW };
    placed = centeredViewport({
      name: 'stake-out plan',
      box,
      model: view,
      scale: scale.ratio,
      items: plan.items,
      over: plan.over,
    });
    const foot = at.y - height + 1.5 * N;
    const bar = scaleBar({ at: { x: at.x + 14 * N, y: foot }, scale, style: PAPER_STYLE });
    return [
      { kind: 'text', layer: 'G-ANNO-TITL', at: { x: at.x, y: foot }, content: scale.label, height: N },
      ...bar.items,
      ...(input.north === undefined
        ? []
        : [
            northArrow({
              at: { x: at.x + width - 4 * N, y: foot + 2.4 * N },
              angle: input.north - Math.PI / 2,
              style: PAPER_STYLE,
            }),
          ]),
    ];
  };
  const points = layout.points.filter((p) => p.role !== 'board');
  const papers: Paper[] = [
    {
      title: 'Stake-out',
      sub: `All from home base: ${layout.homeWords}.`,
      blocks: [
        { kind: 'drawing', height, draw: drawPlan },
        { kind: 'heading', text: 'Before anything is driven or dug' },
        { kind: 'bullets', items: layout.cautions },
        { kind: 'gap' },
        {
          kind: 'table',
          title: 'Points',
          columns: [
            { head: 'Point' },
            { head: 'Along', align: 'right' },
            { head: 'Out', align: 'right' },
            { head: 'Level', align: 'right' },
            { head: 'What', grow: true },
          ],
          rows: points.map(
            (p): TableRow => [
              { text: p.name, mark: p.name, path: p.path },
              len(p.along),
              len(p.out),
              p.level === undefined ? '–' : len(p.level),
              p.note,
            ],
          ),
        },
        { kind: 'gap' },
        {
          kind: 'table',
          title: 'Strings, by running dimensions',
          columns: [
            { head: 'String' },
            { head: 'Runs' },
            { head: 'At', align: 'right' },
            { head: 'Footings under it', grow: true },
          ],
          rows: layout.strings.map(
            (s): TableRow => [
              s.name,
              s.runs === 'out' ? 'out from the wall' : 'along the wall',
              len(s.at),
              s.stations.map((t) => `${t.footing} at ${len(t.running)}`).join(',  '),
            ],
          ),
        },
        { kind: 'para', text: `Strings at ${len(layout.stringLevel)} from the finished floor, ${BOARD_SOURCE}.` },
        { kind: 'gap' },
        {
          kind: 'table',
          title: 'Batter boards',
          columns: [
            { head: 'Nail' },
            { head: 'Along', align: 'right' },
            { head: 'Out', align: 'right' },
            { head: 'String above ground', align: 'right' },
            { head: 'On', grow: true },
          ],
          rows: layout.boards.map(
            (b): TableRow => [
              b.nail,
              len(b.along),
              len(b.out),
              len(b.height),
              b.onWall ? 'mark on the house wall' : 'batter board',
            ],
          ),
        },
      ],
    },
    {
      title: 'Square, levels, post lengths',
      blocks: [
        ...(layout.triangle
          ? [
              {
                kind: 'para' as const,
                text: `Right angle at home base, 3-4-5 at the largest multiple that fits: ${len(layout.triangle.along)} along the wall, ${len(layout.triangle.out)} out, ${len(layout.triangle.across)} across.`,
                face: 'bold' as const,
              },
            ]
          : []),
        ...(layout.rectangles.length > 0
          ? [
              {
                kind: 'table' as const,
                title: 'Diagonals, center to center: both must agree',
                columns: [
                  { head: 'First' },
                  { head: 'Second' },
                  { head: 'Both', align: 'right' as const },
                  { head: 'May differ by', align: 'right' as const },
                  { head: 'Read, first' },
                  { head: 'Read, second', grow: true },
                ],
                rows: layout.rectangles.map(
                  (r): TableRow => [
                    `${r.first.from} – ${r.first.to}`,
                    `${r.second.from} – ${r.second.to}`,
                    len(r.first.length),
                    len(r.mostDifference),
                    '',
                    '',
                  ],
                ),
              },
            ]
          : []),
        ...(layout.ties.length > 0
          ? [
              {
                kind: 'table' as const,
                title: 'Check lengths of points in no rectangle',
                columns: [
                  { head: 'From' },
                  { head: 'To' },
                  { head: 'Length', align: 'right' as const },
                  { head: 'Read', grow: true },
                ],
                rows: layout.ties.map((t): TableRow => [t.from, t.to, len(t.length), '']),
              },
            ]
          : []),
        { kind: 'gap' },
        {
          kind: 'table',
          title: `Levels from the benchmark: ${layout.benchmark.words}`,
          columns: [
            { head: 'Footing' },
            { head: 'Surface there', align: 'right' },
            { head: 'Top of concrete', align: 'right' },
            { head: 'Bottom', align: 'right' },
            { head: 'Depth', align: 'right' },
            { head: 'Read, top', grow: true },
          ],
          rows: layout.piers.map(
            (p): TableRow => [
              { text: p.footing, mark: p.footing, path: p.path },
              len(p.surface),
              len(p.top),
              len(p.bottom),
              len(p.depth),
              levelRead(input, p.footing, len),
            ],
          ),
        },
        { kind: 'gap' },
        {
          kind: 'table',
          title: 'Posts, one cut list',
          columns: [
            { head: 'Post' },
            { head: 'Section' },
            { head: 'Beam underside', align: 'right' },
            { head: 'Own pier top', align: 'right' },
            { head: 'Standoff', align: 'right' },
            { head: 'Length', align: 'right', face: 'condensed-bold' },
            { head: 'As measured', grow: true },
          ],
          rows: layout.posts.map(
            (p): TableRow => [
              { text: p.post, mark: p.post, path: p.path },
              p.section,
              len(p.underside),
              len(p.bears),
              len(p.standoff),
              len(p.length),
              lengthNow(input, p.post, len),
            ],
          ),
        },
        {
          kind: 'para',
          text: `Length = beam underside less own pier top less standoff. Cut nothing before the tops are measured: ${HEIGHT_SOURCE}.`,
        },
        { kind: 'heading', text: 'How true' },
        { kind: 'bullets', items: layout.advice.map((a) => `${a.text} (${a.source})`) },
      ],
    },
    {
      title: 'Readings to take',
      sub: 'Write each down as it is read, with the day and the instrument; then enter them: the program finds the bad one.',
      columns: 2,
      blocks: [
        {
          kind: 'table',
          columns: [
            { head: 'What' },
            { head: 'From' },
            { head: 'To' },
            { head: 'Drawn', align: 'right' },
            { head: 'Read', grow: true },
          ],
          rows: layout.readings.map((r): TableRow => [r.kind, r.from, r.to, len(r.value), '']),
        },
        {
          kind: 'para',
          text: `Levels from the benchmark and from pier to pier, in a ring. How far a reading may be trusted is ${SIGMA_SOURCE}, unless you say so.`,
        },
      ],
    },
    ...(input.built ? [asBuiltPaper(input.built, len, input.second)] : []),
  ];
  const pages = papersOf(papers, paperData(project, 'STK', input.issuable));
  return pages.map((p, i) => (i === 0 && placed ? { ...p, viewports: [placed], scaleNote: scale.label } : p));
}
