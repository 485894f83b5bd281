/**
 * A drawing in pieces: its opening tag, each element in it, its end. Signs of XML in texts and attributes are escaped in
 * our drawings, so every `<` begins a tag and the next `>` ends it.
 *
 * @example piecesOf('<svg><g><path/></g><path/></svg>') // ['<svg>', '<g><path/></g>', '<path/>', '</svg>']
 */
export function piecesOf(svg: string): string[] {
  const pieces: string[] = [];
  let depth = 0;
  let from = 0;
  for (let next = svg.indexOf('<'); next >= 0;) {
    const at = next;
    const end = svg.indexOf('>', at) + 1;
    if (end === 0) break;
    next = svg.indexOf('<', end);
    const closes = svg[at + 1] === '/';
    const whole = svg[end - 2] === '/';
    if (closes) depth--;
    else if (!whole) depth++;
    const opensRoot = depth === 1 && !closes && !whole;
    if (opensRoot ? pieces.length > 0 : depth !== 1) continue;
    pieces.push(svg.slice(from, end));
    from = end;
  }
  pieces.push(svg.slice(from));
  return pieces;
}

/**
 * Lays a drawing into an element. Only the pieces that differ from the drawing that is there are read and laid out anew:
 * while something is dragged, nearly all of a drawing stays as it is.
 *
 * @param before pieces of the drawing that is there
 * @returns pieces of the one that now is
 */
export function redraw(
  holder: Element,
  svg: string,
  before: readonly string[] | undefined,
): readonly string[] {
  const pieces = piecesOf(svg);
  const root = holder.firstElementChild;
  const elements = pieces.length - 2;
  const alike =
    before?.length === pieces.length && before[0] === pieces[0] && root?.childNodes.length === elements;
  if (!alike) holder.innerHTML = svg;
  else
    for (let i = 0; i < elements; i++)
      if (pieces[i + 1] !== before[i + 1]) root.replaceChild(elementOf(pieces[i + 1]!), root.childNodes[i]!);
  return pieces;
}

function elementOf(piece: string): Element {
  const around = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  around.innerHTML = piece;
  return around.firstElementChild!;
}
