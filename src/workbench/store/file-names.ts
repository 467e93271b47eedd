/** A title as a file name that every system takes. */
export function fileStem(title: string): string {
  const stem = title.normalize('NFKD').replace(/[\u0300-\u036f]/g, '').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 60);
  return stem || 'job';
}

export function jobFile(title: string): string {
  return `${fileStem(title)}.laydown`;
}
