// Writing SVG as text: escaped, with numbers short enough to read and to compare.

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** One element; attributes that are undefined are left out, children are finished SVG text. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? short(value) : escaped(value!)}"`)
    .join('');
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join('')}</${name}>`;
}

/** A line of text at a point. */
export function label(x: number, y: number, text: string, attributes: Attributes = {}): string {
  return element('text', { x, y, ...attributes }, escaped(text));
}

/** Text as it may stand in an element or attribute; signs that XML forbids are left out. */
export function escaped(text: string): string {
  return Array.from(text)
    .filter((sign) => sign >= ' ' || sign === '\n' || sign === '\t')
    .filter((sign) => sign !== '\uFFFE' && sign !== '\uFFFF')
    .join('')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** A number with at most two decimals, without trailing zeros: a hundredth of a unit is finer than any line. */
export function short(value: number): string {
  const text = value.toFixed(2);
  return text.includes('.') ? text.replace(/\.?0+$/, '').replace(/^-0$/, '0') : text;
}
