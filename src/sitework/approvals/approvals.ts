/** Where each approval stands, what comes next, and when a permit lapses. The day of today is handed in. */
import type { ApprovalKind, Log, Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';
import { dateOf, dayNumber } from './dates.js';
import { OFFICES } from './offices.js';

/** Days without work or a passed inspection after which permits lapse where nothing else is said. */
export const INACTIVE_DAYS = 180;
export const INACTIVE_SOURCE =
  '180 days: Napa CA, Lake Oswego OR, Monterey Park CA, Edina MN, Oldsmar FL; other offices differ';
/** Days ahead that a lapse is told. */
const SOON = 30;

type Written = Log['approvals'][number];

export interface Clock {
  /** Last day on which something counted. */
  readonly since: string;
  readonly lapses: string;
  /** Undefined without a day of today. */
  readonly daysLeft?: number | undefined;
  readonly state: 'running' | 'soon' | 'lapsed' | 'finished' | 'unknown';
}

export interface ApprovalStep {
  readonly kind: ApprovalKind;
  readonly title: string;
  readonly order: string;
  readonly needs: readonly string[];
  readonly applies: 'yes' | 'ask';
  readonly state: Written['state'] | 'not-listed';
  readonly date: string;
  readonly note: string;
  /** Steps before it that are not granted. */
  readonly waitsFor: readonly string[];
  readonly clock?: Clock | undefined;
  readonly source: string;
}

/** Which office a row of the log is: as it says, else by the first office whose words its name holds. */
export function kindOf(a: Written): ApprovalKind | undefined {
  return (
    a.kind ??
    (Object.keys(OFFICES) as ApprovalKind[]).find((k) => k !== 'building' && OFFICES[k].words.test(a.body)) ??
    (OFFICES.building.words.test(a.body) ? 'building' : undefined)
  );
}

const LAPSING: ReadonlySet<ApprovalKind> = new Set(['building', 'electrical']);

function clockOf(a: Written, project: Project, today: string | undefined): Clock | undefined {
  const granted = a.state === 'granted' ? dayNumber(a.date) : undefined;
  if (granted === undefined) return undefined;
  const seen = (project.log.inspections ?? []).filter((i) => i.result === 'passed' || i.result === 'partial');
  const finished = seen.some((i) => i.stage === 'final' && i.result === 'passed');
  const since = Math.max(granted, ...seen.flatMap((i) => dayNumber(i.date) ?? []));
  const lapses = since + (a.lapsesAfter ?? INACTIVE_DAYS);
  const now = today === undefined ? undefined : dayNumber(today);
  const left = now === undefined ? undefined : lapses - now;
  const state = finished
    ? 'finished'
    : left === undefined
      ? 'unknown'
      : left < 0
        ? 'lapsed'
        : left <= SOON
          ? 'soon'
          : 'running';
  return { since: dateOf(since), lapses: dateOf(lapses), daysLeft: left, state };
}

/** Every office in the order to ask, with what the log says. `today` is a date; without it no clock is judged. */
export function approvalsOf(project: Project, structure: Structure, today?: string): readonly ApprovalStep[] {
  const steps: ApprovalStep[] = [];
  for (const kind of Object.keys(OFFICES) as ApprovalKind[]) {
    const office = OFFICES[kind];
    const rows = project.log.approvals.filter((a) => kindOf(a) === kind);
    const row = rows.at(-1);
    const applies = row ? 'yes' : office.applies(project, structure);
    if (applies === 'no') continue;
    const before = steps.filter(
      (s) => s.applies === 'yes' && s.state !== 'granted' && kind !== 'association' && s.kind !== 'building',
    );
    steps.push({
      kind,
      title: office.title,
      order: office.order,
      needs: office.needs,
      applies,
      state: row?.state ?? 'not-listed',
      date: row?.date ?? '',
      note: row?.note ?? '',
      waitsFor: row?.state === 'granted' ? [] : before.map((s) => s.title),
      clock: row && LAPSING.has(kind) ? clockOf(row, project, today) : undefined,
      source: office.source,
    });
  }
  return steps;
}
