/** The panels, in the order of their keys. A new one is a file with a default export and a row here. */
import { type ComponentType, lazy } from 'react';
import { Findings } from '../findings/Findings.js';
import { Start } from '../start/Start.js';

export interface PanelKind {
  readonly title: string;
  /** Word on its key. */
  readonly short: string;
  readonly Component: ComponentType;
}

export const PANELS: Readonly<Record<string, PanelKind>> = {
  start: { title: 'Questions', short: 'Start', Component: Start },
  findings: { title: 'Findings', short: 'Findings', Component: Findings },
  part: { title: 'Part and load path', short: 'Part', Component: lazy(() => import('../parts/PartPanel.js')) },
  file: { title: 'Your file', short: 'File', Component: lazy(() => import('../fields/FilePanel.js')) },
  outputs: { title: 'Print and send', short: 'Print', Component: lazy(() => import('../outputs/OutputsPanel.js')) },
  buy: { title: 'Buy and cut', short: 'Buy', Component: lazy(() => import('../buy/BuyPanel.js')) },
  site: { title: 'On the site', short: 'Site', Component: lazy(() => import('../site/SitePanel.js')) },
  history: {
    title: 'Changes and versions',
    short: 'Changes',
    Component: lazy(() => import('../store/HistoryPanel.js')),
  },
};
