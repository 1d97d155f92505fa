/** Elements that have no end tag (HTML living standard, section 13.1.2). */
const VOID = new Set(['meta', 'br', 'hr', 'img', 'input', 'link', 'col', 'wbr', 'base', 'source', 'area']);

export type Element = {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  text: string;
};

/**
 * Reads a page strictly: every tag closed in order, every attribute quoted and given once, no stray `<`, `>` or `&`.
 * Returns the elements in document order with their own text; throws at the first fault.
 */
export function checkHtml(html: string): Element[] {
  if (!html.startsWith('<!DOCTYPE html>\n')) throw new Error('no doctype');
  const elements: Element[] = [];
  const open: Element[] = [];
  const token = /<(\/?)([a-zA-Z][a-zA-Z0-9]*)((?:\s+[a-zA-Z:-]+="[^"<>]*")*)\s*(\/?)>|([^<]+)|([\s\S])/gy;
  token.lastIndex = '<!DOCTYPE html>\n'.length;
  for (let match = token.exec(html); match; match = token.exec(html)) {
    const [whole, isEnd, tag = '', attributes = '', isSelfClosed, text, stray] = match;
    const around = html.slice(Math.max(0, match.index - 60), match.index + 60);
    if (stray !== undefined) throw new Error(`stray ${stray} near ${around}`);
    if (text !== undefined) {
      const top = open.at(-1);
      const isRaw = top?.tag === 'style';
      if (!isRaw && text.includes('>')) throw new Error(`stray > near ${around}`);
      if (!isRaw && /&(?!(amp|lt|gt|quot|#39);)/.test(text)) throw new Error(`stray & near ${around}`);
      if (text.trim() !== '' && !top) throw new Error(`text outside the page near ${around}`);
      if (top) top.text += text;
    } else if (isEnd) {
      const last = open.pop();
      if (last?.tag !== tag) throw new Error(`</${tag}> closes <${last?.tag}> near ${around}`);
    } else {
      const element = { tag, attributes: readAttributes(attributes, whole), text: '' };
      elements.push(element);
      if (!isSelfClosed && !VOID.has(tag)) open.push(element);
    }
  }
  if (open.length > 0) throw new Error(`not closed: ${open.map((element) => element.tag).join(', ')}`);
  return elements;
}

function readAttributes(text: string, tag: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const [, name = '', value = ''] of text.matchAll(/([a-zA-Z:-]+)="([^"]*)"/g)) {
    if (Object.hasOwn(found, name)) throw new Error(`${name} given twice in ${tag}`);
    found[name] = value;
  }
  return found;
}
