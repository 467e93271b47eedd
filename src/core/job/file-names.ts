/** A title as a file name that every system takes. */
export function fileStem(title: string): string {
  const stem = title
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return stem || 'job';
}

export function jobFile(title: string): string {
  return `${fileStem(title)}.laydown`;
}

/** Of a sheet of stock; in parts on a printer's paper it is a PDF too. */
export function stockFileName(title: string, material: string, number: number, format: string): string {
  const ending = ['svg', 'dxf', 'pdf'].includes(format) ? `.${format}` : `-${format}.pdf`;
  return `${fileStem(title)}-${fileStem(material)}-${number}${ending}`;
}
