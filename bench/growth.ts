/**
 * How the time of a whole derive grows with the number of posts, 10 to 1,000: free-standing sheds in rows, each on two
 * beams with a post every 4 ft. Writes the plot to docs/growth.svg. Nothing here fails a build.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { derive } from '../src/index.js';
import { measure, type Time } from './measure.js';

const root = join(import.meta.dirname, '..');
type Json = Record<string, unknown>;

/** Posts stand 4 ft apart, at most so many on one beam; further posts go to further roofs. */
const STEP = 4;
const MOST = 50;

function coverOf(posts: number): Json {
  const onBeam = Math.min(MOST, posts / 2);
  const rows = Math.round(posts / 2 / onBeam);
  const length = STEP * (onBeam - 1) + 2;
  const beams: Json[] = [];
  const roofs: Json[] = [];
  let n = 0;
  for (let r = 0; r < rows; r++) {
    const near = 10 + 20 * r;
    const names = [near, near + 12].map((y) => {
      const mark = `B${beams.length + 1}`;
      beams.push({
        mark,
        from: [`${-length / 2} ft`, `${y} ft`],
        to: [`${length / 2} ft`, `${y} ft`],
        section: 'beam',
        posts: Array.from({ length: onBeam }, (_, i) => {
          n++;
          return { mark: `P${n}`, at: `${1 + STEP * i} ft`, section: 'post', footing: 'pad', footingMark: `F${n}` };
        }),
      });
      return mark;
    });
    roofs.push({ mark: `R${r + 1}`, high: { beam: names[0] }, low: names[1], length });
  }
  return { beams, roofs } as Json;
}

async function projectOf(posts: number): Promise<string> {
  const text = await readFile(join(root, 'examples/02-shed-snow-two-storey/project.json'), 'utf8');
  const doc = JSON.parse(text.replace(/^\s*\/\/.*$/gm, '')) as Json;
  const cover = doc.cover as Json;
  const pattern = (cover.roofs as Json[])[0]!;
  const { beams, roofs } = coverOf(posts) as { beams: Json[]; roofs: (Json & { length: number })[] };
  cover.attachment = 'free-standing';
  cover.ledgers = [];
  cover.beams = beams;
  cover.roofs = roofs.map(({ mark, high, low, length }) => ({
    ...pattern,
    mark,
    high,
    low,
    from: `${-length / 2 + 0.5} ft`,
    to: `${length / 2 - 0.5} ft`,
    bearing: '10 ft',
    highOverhang: '6 in',
  }));
  const { lateral } = cover;
  cover.lateral = { ...(lateral as Json), x: 'unknown', y: 'unknown' };
  // A flat field, without slab and with ground enough.
  doc.patio = { grade: { atHouse: '-12 in', fall: '0 in/ft' }, slabs: [], steps: [] };
  const side = 1200;
  doc.lot = {
    courses: [
      { bearing: `N 90°00'00" E`, distance: `${side} ft`, yard: 'front', name: 'south line' },
      { bearing: `N 00°00'00" E`, distance: `${side} ft`, yard: 'right', name: 'east line' },
      { bearing: `N 90°00'00" W`, distance: `${side} ft`, yard: 'rear', name: 'north line' },
      { bearing: `S 00°00'00" W`, distance: `${side} ft`, yard: 'left', name: 'west line' },
    ],
    street: { name: 'Field Road', course: 0 },
    origin: { east: `${side / 2} ft`, north: '300 ft' },
    outward: `N 00°00'00" E`,
    easements: [],
    buildings: [],
    items: [],
    paving: [],
  };
  return JSON.stringify(doc);
}

export interface Point {
  readonly posts: number;
  readonly time: Time;
}

async function at(posts: number): Promise<Point> {
  const text = await projectOf(posts);
  const first = derive(text);
  const faults = first.issues.filter((i) => i.severity === 'error');
  if (faults.length > 0 || !first.effects) throw new Error(faults.map((i) => `${i.path}: ${i.message}`).join('\n'));
  return { posts, time: await measure(() => derive(text), 300, 3) };
}

/** Log–log plot; a dashed line shows growth in proportion. */
function plot(points: readonly Point[]): string {
  const [w, h, m] = [560, 360, 56];
  const top = Math.ceil(Math.log10(Math.max(...points.map((p) => p.time.best))));
  const low = Math.floor(Math.log10(Math.min(...points.map((p) => p.time.best))));
  const x = (n: number): number => m + ((Math.log10(n) - 1) / 2) * (w - 2 * m);
  const y = (ms: number): number => h - m - ((Math.log10(ms) - low) / (top - low)) * (h - 2 * m);
  const line = points.map((p) => `${x(p.posts).toFixed(1)},${y(p.time.best).toFixed(1)}`).join(' ');
  const first = points[0]!;
  const last = points.at(-1)!;
  const even = first.time.best * (last.posts / first.posts);
  const parts = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${w} ${h}" font-family="sans-serif" font-size="12">`,
    '<title>Whole derive, warm, by number of posts</title>',
    `<rect width="${w}" height="${h}" fill="#fff"/>`,
    ...[10, 100, 1000].map(
      (n) =>
        `<line x1="${x(n)}" y1="${m}" x2="${x(n)}" y2="${h - m}" stroke="#ccc"/><text x="${x(n)}" y="${h - m + 18}" text-anchor="middle">${n}</text>`,
    ),
    ...Array.from({ length: top - low + 1 }, (_, i) => 10 ** (low + i)).map(
      (ms) =>
        `<line x1="${m}" y1="${y(ms)}" x2="${w - m}" y2="${y(ms)}" stroke="#ccc"/><text x="${m - 6}" y="${y(ms) + 4}" text-anchor="end">${ms} ms</text>`,
    ),
    `<line x1="${x(first.posts)}" y1="${y(first.time.best)}" x2="${x(last.posts)}" y2="${y(even)}" stroke="#000" stroke-dasharray="4 4"/>`,
    `<polyline points="${line}" fill="none" stroke="#8a3b1e" stroke-width="2"/>`,
    ...points.map((p) => `<circle cx="${x(p.posts)}" cy="${y(p.time.best)}" r="3.5" fill="#8a3b1e"/>`),
    `<text x="${w / 2}" y="${h - 14}" text-anchor="middle">posts (dashed: in proportion)</text>`,
    `<text x="${w / 2}" y="28" text-anchor="middle">Whole derive, warm, best run, by number of posts</text>`,
    '</svg>',
  ];
  return `${parts.join('\n')}\n`;
}

/** Sizes measured; the plot is written beside the verification report. */
export async function growth(): Promise<readonly Point[]> {
  const points: Point[] = [];
  for (const posts of [10, 20, 50, 100, 200, 500, 1000]) points.push(await at(posts));
  await writeFile(join(root, 'docs/growth.svg'), plot(points));
  return points;
}
