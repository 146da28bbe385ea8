/** Files in and out. Nothing is sent anywhere: a file is handed to the browser, which asks where to put it. */
import type { ExportFile, ExportKind } from '../core/api.js';
import { thorough } from '../core/client.js';
import { fonts } from '../core/files.js';
import { begin, say, textNow, useProject } from '../store/project.js';

export function hand(file: ExportFile): void {
  const url = URL.createObjectURL(new Blob([file.bytes.slice().buffer as ArrayBuffer], { type: file.mime }));
  const a = document.createElement('a');
  a.href = url;
  a.download = file.name;
  document.body.append(a);
  a.click();
  a.remove();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

const slug = (): string =>
  (useProject.getState().summary?.title ?? 'patio')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'patio';

export function saveFile(): void {
  hand({ name: `${slug()}.json`, mime: 'application/json', bytes: new TextEncoder().encode(textNow()) });
}

export async function exported(kind: ExportKind, sheet: string | undefined): Promise<readonly ExportFile[]> {
  const worker = thorough();
  await worker.call('derive', textNow(), undefined);
  return worker.call('export', kind, await fonts(), sheet);
}

export async function openFile(file: File): Promise<void> {
  if (file.size > 4_000_000) {
    say(`${file.name} is far larger than any project file.`, 'problem');
    return;
  }
  await begin(await file.text(), `opened ${file.name}`);
}
