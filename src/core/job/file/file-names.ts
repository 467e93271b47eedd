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

/** A name no other in the list has: `kelp`, `kelp-2`, … */
export function freshId(list: readonly { readonly id: string }[], name: string): string {
  const stem = fileStem(name);
  const taken = new Set(list.map((item) => item.id));
  for (let n = 1; ; n++) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    if (!taken.has(id)) return id;
  }
}

/** A name that none of them has: a second “Leaf” is “Leaf 2”. */
export function freshName(list: readonly { readonly name: string }[], name: string): string {
  const taken = new Set(list.map((item) => item.name));
  for (let n = 1; ; n++) {
    const fresh = n === 1 ? name : `${name} ${n}`;
    if (!taken.has(fresh)) return fresh;
  }
}
