/** The chain as plain text for a terminal. */
import type { PathAnswer, PathShare, PathStation, PathStep, PathWay } from './model.js';

const WAY: Readonly<Record<PathWay, string>> = { down: 'down', up: 'up', side: 'sideways' };

const figure = (x: number): string =>
  Math.abs(x) >= 100 ? Math.round(x).toLocaleString('en-US') : String(Number(x.toPrecision(3)));

function shareText(s: PathShare): string {
  const way = WAY[s.way].padEnd(8);
  if (s.ratio === undefined) {
    const asked = s.demand > 0 ? `${figure(s.demand)} ${s.unit} asked, ` : '';
    return `${way} ${asked}${s.by}`;
  }
  if (s.ratio === 0) return `${way} 0.00  nothing asked`;
  if (s.capacity === undefined) {
    return `${way} ${s.ratio.toFixed(2)}  ${figure(s.demand)} ${s.unit}, all ways together, ${s.by}`;
  }
  return `${way} ${s.ratio.toFixed(2)}  ${figure(s.demand)} of ${figure(s.capacity)} ${s.unit}, ${s.by}`;
}

function stationText(s: PathStation, asked: boolean): string {
  const count = s.count > 1 ? ` (${s.count} alike)` : '';
  const worst = s.worst ? `   nearest its limit: ${s.worst.title.toLowerCase()} ${s.worst.ratio.toFixed(2)}` : '';
  return `${asked ? '>' : ' '} ${s.mark} ${s.mark === s.what ? '' : s.what}${count}${worst}`.trimEnd();
}

const stepText = (s: PathStep): readonly string[] => {
  const count = s.count > 1 ? ` (${s.count})` : '';
  const name = s.mark === '' ? s.what : `${s.mark} ${s.what}`;
  const all = s.together === undefined ? '' : `   all ways together ${s.together.toFixed(2)}`;
  return [`    ↓ to ${s.to} by ${name}${count}${all}`, ...s.shares.map((q) => `        ${shareText(q)}`)];
};

export function pathText(p: PathAnswer): string {
  const lines = [`Load path through ${p.mark}, roof to ${p.ends.join(' and ') || 'nowhere'}: demand over capacity`, ''];
  for (const station of p.stations) {
    lines.push(stationText(station, station.mark === p.mark));
    for (const step of p.steps) if (step.from === station.mark) lines.push(...stepText(step));
  }
  if (p.breaks.length > 0) lines.push('', 'Broken:', ...p.breaks.map((b) => `  ${b}`));
  return `${lines.join('\n')}\n`;
}
