// Tables as CSV (RFC 4180). A cell that a spreadsheet would take for a formula is kept as text.

import Papa from 'papaparse';

export const csv = (head: string[], rows: string[][]): string =>
  Papa.unparse(
    { fields: head, data: rows },
    { newline: '\r\n', escapeFormulae: /^\s*[=+\-@\uff0b\uff0d\uff1d\uff20]|^[\t\r\n]/ },
  ) + '\r\n';
