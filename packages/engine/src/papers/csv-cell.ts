/** A cell of comma-separated text: quoted where RFC 4180 wants it. */
export function csvCell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
