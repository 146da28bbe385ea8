/** What is handed in beside the drawings, and what came back. Nothing here is designed with. */

export interface OfficeChecklist {
  /** Whose list it is, as printed; empty when not said. */
  readonly office: string;
  /** Names of rows this office does not ask for. */
  readonly remove: readonly string[];
  readonly add: readonly {
    readonly item: string;
    /** Words that a sheet must carry; absent when no sheet answers it. */
    readonly words?: string | undefined;
    readonly answer?: string | undefined;
    readonly path: string;
  }[];
}

/** A reviewer's comment and its answer. Texts are empty when not given. */
export interface ReviewComment {
  readonly number: string;
  readonly from: string;
  readonly date: string;
  readonly text: string;
  readonly answer: string;
  readonly sheet: string;
  readonly place: string;
  readonly path: string;
}

export interface AssociationPacket {
  readonly name: string;
  readonly finishes: readonly {
    readonly part: string;
    readonly material: string;
    readonly color: string;
    readonly sample: string;
  }[];
  readonly schedule: readonly { readonly step: string; readonly when: string; readonly note: string }[];
  readonly storage: string;
  readonly drainage: string;
  readonly neighbors: readonly { readonly name: string; readonly side: string }[];
}

export interface Submittal {
  readonly officeChecklist: OfficeChecklist;
  readonly comments: readonly ReviewComment[];
  readonly association?: AssociationPacket | undefined;
}
