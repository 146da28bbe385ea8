/** What lies on the desk: which sheet, which part is picked, which panel is open. None of it is part of the project. */
import { create } from 'zustand';

export type PanelId = string;
export type Main = 'sheets' | 'model';

interface Desk {
  readonly sheet: string | undefined;
  /** Mark of the picked part. */
  readonly picked: string | undefined;
  /** Result whose trace is open. */
  readonly result: string | undefined;
  /** Field of the file that a question or finding points at. */
  readonly field: string | undefined;
  readonly panel: PanelId;
  readonly main: Main;
  readonly sheetDrawn: (id: string) => void;
}

export const useDesk = create<Desk>((set) => ({
  sheet: undefined,
  picked: undefined,
  result: undefined,
  field: undefined,
  panel: 'start',
  main: 'sheets',
  sheetDrawn: (sheet) => set({ sheet }),
}));

export const openPanel = (panel: PanelId): void => useDesk.setState({ panel });
export const pick = (mark: string | undefined): void => useDesk.setState({ picked: mark, result: undefined });
export const showMain = (main: Main): void => useDesk.setState({ main });
export const openResult = (result: string | undefined, mark?: string): void =>
  useDesk.setState(mark === undefined ? { result } : { result, picked: mark });
export const openField = (field: string): void => useDesk.setState({ field, panel: 'file' });
