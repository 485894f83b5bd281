import writeXlsxFile from 'write-excel-file/node';
import type { BillSheet } from './bill-table.ts';

/** Sheets as a workbook. Every text is a text cell, so that none of it runs; money has two decimals. */
export async function billXlsx(sheets: readonly BillSheet[]): Promise<Buffer> {
  return writeXlsxFile(
    sheets.map(({ name, head, rows, money }) => ({
      sheet: name,
      stickyRowsCount: 1,
      columns: head.map((title, i) => ({
        width: Math.min(60, Math.max(title.length, ...rows.map((r) => String(r[i] ?? '').length)) + 2),
      })),
      data: [
        head.map((value) => ({ type: String, value, fontWeight: 'bold' as const })),
        ...rows.map((row) =>
          row.map((value, i) => {
            if (value === '') return null;
            return typeof value === 'number'
              ? { type: Number, value, ...(money.includes(i) ? { format: '#,##0.00' } : {}) }
              : { type: String, value };
          }),
        ),
      ],
    })),
  ).toBuffer();
}
