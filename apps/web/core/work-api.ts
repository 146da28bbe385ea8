/** What the Buy and Site views ask of the workers. Everything is plain data; lengths are inches. */
import type {
  ApprovalStep,
  AsBuilt,
  Compared,
  Costs,
  CutGroup,
  Layout,
  Open,
  Phase,
  PhaseCost,
  PricedLine,
  PriceRow,
  ReadReading,
  Sequence,
  StageCard,
} from '../../../src/index.js';
import type { Changed, ExportFile } from './answers.js';

/** Something written down on the site or at the counter; it becomes a change of the project file. */
export type Noted =
  | {
      readonly what: 'item';
      readonly stage: string;
      readonly item: string;
      readonly today: string;
      readonly set: {
        readonly done?: boolean;
        readonly measured?: string;
        readonly note?: string;
        readonly photo?: string;
      };
    }
  | {
      readonly what: 'visit';
      readonly stage: string;
      readonly today: string;
      readonly set: { readonly date?: string; readonly result?: string; readonly by?: string; readonly note?: string };
    }
  | {
      readonly what: 'reading';
      readonly kind: string;
      /** Undefined: from where the kind of reading starts. */
      readonly from: string | undefined;
      readonly to: string;
      /** 0 for the first reading between these points, 1 for the second. */
      readonly nth: number;
      /** As typed; empty takes the reading out. */
      readonly typed: string;
      readonly today: string;
      readonly instrument: string;
    }
  | {
      readonly what: 'price';
      readonly item: string;
      readonly unit: string;
      /** As typed; empty takes the price out. */
      readonly typed: string;
    }
  | { readonly what: 'prices'; readonly rows: readonly PriceRow[] };

/** A length to tape, with what was read. */
export interface ReadingRow {
  readonly kind: 'along' | 'out' | 'distance' | 'level';
  readonly from: string | undefined;
  readonly to: string;
  readonly nth: number;
  readonly words: string;
  readonly designed: number;
  readonly read?: (ReadReading & { readonly expected?: number | undefined }) | undefined;
}

export interface SiteView {
  readonly units: 'us' | 'metric';
  readonly cards: readonly StageCard[];
  readonly sequence: Sequence;
  readonly approvals: readonly ApprovalStep[];
  readonly layout: Layout;
  readonly readings: readonly ReadingRow[];
  readonly built: Omit<AsBuilt, 'readings'> | undefined;
  /** The whole flow run with what was measured. */
  readonly second:
    | { readonly issuable: boolean; readonly reasons: readonly string[]; readonly worse: readonly string[] }
    | undefined;
  readonly problems: readonly string[];
}

export interface BuyPhase {
  readonly phase: Phase;
  readonly name: string;
  readonly lines: readonly PricedLine[];
  readonly cost: PhaseCost | undefined;
}

export interface BuyView {
  readonly units: 'us' | 'metric';
  /** Printed wherever prices are; empty when they are the owner's own. */
  readonly pricesAre: string;
  /** False when the solver could not be started: plans are then by the own search, their gap is stated all the same. */
  readonly solver: boolean;
  readonly phases: readonly BuyPhase[];
  readonly totals: Pick<Costs, 'material' | 'work' | 'total'> & {
    readonly unpriced: number;
    readonly unknownWork: readonly string[];
  };
  readonly open: readonly Open[];
  readonly cuts: readonly CutGroup[];
  /** What the truss order and the papers of the plant do not agree on. */
  readonly mismatches: readonly string[];
}

export const WORK_FILES = {
  'buy.pdf': 'What to buy, PDF',
  'hire.pdf': 'Hiring papers, PDF',
  'buy.xlsx': 'Purchase and cut lists, spreadsheet',
  'buy.csv': 'Purchase list, CSV',
  'prices.csv': 'Price list to fill in, CSV',
  'stake.pdf': 'Stake-out, PDF',
  'stake.csv': 'Points to stake, CSV',
  'stages.pdf': 'Stage cards, PDF',
  'stages.csv': 'Stage cards as filled in, CSV',
} as const;
export type WorkFile = keyof typeof WORK_FILES;

export interface WorkOptions {
  readonly today: string;
  readonly invented: boolean;
  /** Bytes of the solver; undefined where they could not be had. */
  readonly solver: Uint8Array | undefined;
}

export interface QuickWork {
  /** Text with the note written into it. */
  noted(text: string, note: Noted): Changed;
}

export interface ThoroughWork {
  site(text: string, today: string): SiteView | undefined;
  buy(text: string, o: WorkOptions): Promise<BuyView | undefined>;
  compared(text: string, o: WorkOptions): Promise<readonly Compared[]>;
  pricesFrom(csv: string): { readonly rows: readonly PriceRow[] | undefined; readonly problems: readonly string[] };
  workFile(
    name: WorkFile,
    text: string,
    fonts: Readonly<Record<string, Uint8Array>>,
    o: WorkOptions,
  ): Promise<ExportFile | undefined>;
}
