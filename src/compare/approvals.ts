/** Approvals that were given, or asked for, on drawings that have changed since. */
import type { Log } from '../project/model.js';
import type { SheetChange } from './sheets.js';

export interface ApprovalTouched {
  readonly body: string;
  readonly state: string;
  readonly sheets: readonly string[];
}

/** What a body looks at: some see only the lot and the outside; whoever else has said something has seen the whole set. */
const LOOKS: readonly { readonly body: RegExp; readonly sheets: RegExp }[] = [
  { body: /zoning|planning|setback/i, sheets: /^(C-|A-2)/ },
  { body: /association|committee|hoa|architectural/i, sheets: /^(C-|A-[29])/ },
  { body: /septic|health|well/i, sheets: /^(C-|S-101)/ },
];

/** Approvals applied for, granted or refused, with the touched sheets each had before it. */
export function touchedApprovals(log: Log, changes: readonly SheetChange[]): ApprovalTouched[] {
  return log.approvals.flatMap((a) => {
    if (a.state === 'needed') return [];
    const looks = LOOKS.find((l) => l.body.test(a.body))?.sheets ?? /./;
    const sheets = changes.map((c) => c.sheet).filter((id) => looks.test(id));
    return sheets.length > 0 ? [{ body: a.body, state: a.state, sheets }] : [];
  });
}
