const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Characters XML 1.0 cannot carry at all. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to remove.
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

/** Text safe inside an XML element or a quoted attribute. */
export const escapeXml = (text: string): string => text.replace(FORBIDDEN, '').replace(/[&<>"']/g, (c) => ESCAPES[c]!);
