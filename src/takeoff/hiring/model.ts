/** Scopes of work, bids on them, and what is paid when. Numbers are the model's; the words are ours, the law is the state's. */
import type { Bid, Phase } from '../../project/model/buying.js';
import type { Project } from '../../project/model.js';
import type { Structure } from '../../structure/model.js';
import type { Takeoff } from '../model.js';

export interface ScopeInput {
  readonly project: Project;
  readonly structure: Structure;
  readonly takeoff: Takeoff;
}

export interface ScopeLine {
  /** `C3`: what bids answer by. */
  readonly id: string;
  readonly text: string;
  /** What is measured; empty where a line is a duty. */
  readonly quantity: string;
}

export interface Payment {
  readonly when: string;
  /** Percent of the contract sum. */
  readonly percent: number;
  readonly proof: string;
}

/** A trade that can be hired; a file each in `trades/`, listed in `registry.ts`. */
export interface Trade {
  readonly title: string;
  readonly letter: string;
  readonly phases: readonly Phase[];
  /** Texts and quantities in order; empty when there is nothing for the trade to do. */
  readonly lines: (input: ScopeInput) => readonly Omit<ScopeLine, 'id'>[];
  readonly questions: readonly string[];
  /** Percents add up to 100. */
  readonly payments: readonly Payment[];
}

export interface Scope {
  readonly trade: string;
  readonly title: string;
  readonly lines: readonly ScopeLine[];
  readonly questions: readonly string[];
  readonly payments: readonly Payment[];
}

export interface BidStanding {
  readonly bid: Bid;
  /** Lines of the scope the bid leaves out, says nothing of, or offers otherwise. */
  readonly excluded: readonly string[];
  readonly silent: readonly string[];
  readonly different: readonly { readonly line: string; readonly note: string }[];
  /** Lines it names that the scope does not have. */
  readonly stray: readonly string[];
  /** Deposit as a share of its total. */
  readonly deposit: number;
  /** Every line included: its total may be compared with others. */
  readonly whole: boolean;
}

export interface BidComparison {
  readonly trade: string;
  readonly standings: readonly BidStanding[];
  /** One word: what can be said now. */
  readonly finding: string;
}
