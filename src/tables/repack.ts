import { unzipSync, zipSync } from 'fflate';

/** First day that a zip entry can carry. Entries hold local time, so it is written as local time, without a zone. */
const EARLIEST = '1980-01-01T00:00:00';

/**
 * A zip packed anew by one deflate of our own. A library that asks the host to compress gives other bytes in a browser than
 * under Node, though the same content.
 */
export function repack(zip: Uint8Array): Uint8Array {
  const files = unzipSync(zip);
  return zipSync(files, { level: 6, mtime: EARLIEST });
}
