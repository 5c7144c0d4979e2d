/**
 * Formulas in plain arithmetic: read, worked out, and written as people write them.
 *
 * The grammar is that of {@link Working.expression}: `+ - * / ^ ( )`, numbers, names, calls. `^` binds strongest and to
 * the right, as everywhere in mathematics.
 */

/** A formula as a tree. */
export type Node =
  | { kind: 'number'; text: string }
  | { kind: 'name'; name: string }
  | { kind: 'minus'; of: Node }
  | { kind: 'call'; name: string; args: readonly Node[] }
  | { kind: 'binary'; op: '+' | '-' | '*' | '/' | '^'; left: Node; right: Node };

const TOKEN = /\s*(?:(\d+(?:\.\d+)?(?:e[+-]?\d+)?)|([A-Za-z]\w*)|([-+*/^(),]))/y;

function tokensOf(expression: string): string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < expression.length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(expression);
    if (!match) throw new SyntaxError(`formula: cannot read '${expression.slice(at)}' of '${expression}'`);
    tokens.push(match[0].trim());
  }
  return tokens;
}

/** Reads a formula from its tokens, from left to right. */
class Reader {
  readonly #tokens: readonly string[];
  #at = 0;

  constructor(tokens: readonly string[]) {
    this.#tokens = tokens;
  }

  #next(): string | undefined {
    return this.#tokens[this.#at];
  }

  #take(...wanted: readonly string[]): string | null {
    const token = this.#next();
    if (token === undefined || !wanted.includes(token)) return null;
    this.#at += 1;
    return token;
  }

  #must(wanted: string): void {
    if (this.#take(wanted) === null)
      throw new SyntaxError(`formula: found ${this.#next() ?? 'its end'}, allowed: ${wanted}`);
  }

  whole(): Node {
    const node = this.sum();
    if (this.#next() !== undefined) throw new SyntaxError(`formula: found ${this.#next()}, allowed: its end`);
    return node;
  }

  sum(): Node {
    let left = this.#product();
    for (let op = this.#take('+', '-'); op; op = this.#take('+', '-'))
      left = { kind: 'binary', op: op as '+' | '-', left, right: this.#product() };
    return left;
  }

  #product(): Node {
    let left = this.#signed();
    for (let op = this.#take('*', '/'); op; op = this.#take('*', '/'))
      left = { kind: 'binary', op: op as '*' | '/', left, right: this.#signed() };
    return left;
  }

  #signed(): Node {
    if (this.#take('-')) return { kind: 'minus', of: this.#signed() };
    const left = this.#atom();
    return this.#take('^') ? { kind: 'binary', op: '^', left, right: this.#signed() } : left;
  }

  #atom(): Node {
    if (this.#take('(')) {
      const inside = this.sum();
      this.#must(')');
      return inside;
    }
    const token = this.#next();
    if (token === undefined || !/^\w/.test(token))
      throw new SyntaxError(`formula: found ${token ?? 'its end'}, allowed: a number or a name`);
    this.#at += 1;
    if (/^\d/.test(token)) return { kind: 'number', text: token };
    return this.#take('(') ? this.#call(token) : { kind: 'name', name: token };
  }

  #call(name: string): Node {
    const args = [this.sum()];
    while (this.#take(',')) args.push(this.sum());
    this.#must(')');
    return { kind: 'call', name, args };
  }
}

/**
 * Reads a formula.
 * @throws SyntaxError if it is none
 */
export const parseFormula = (expression: string): Node => new Reader(tokensOf(expression)).whole();

const FUNCTIONS: Readonly<Record<string, (...values: number[]) => number>> = {
  ceil: Math.ceil,
  floor: Math.floor,
  round: Math.round,
  min: Math.min,
  max: Math.max,
  sqrt: Math.sqrt,
  log2: Math.log2,
  log: Math.log,
  exp: Math.exp,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  atan: Math.atan,
  atan2: Math.atan2,
  abs: Math.abs,
};

const OPERATIONS: Readonly<Record<'+' | '-' | '*' | '/' | '^', (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '^': (a, b) => a ** b,
};

/**
 * Works a formula out.
 * @param numberOf - value of a name; undefined if there is none of that name
 * @throws ReferenceError if a name or a function is not known
 */
export function evaluate(node: Node, numberOf: (name: string) => number | undefined): number {
  switch (node.kind) {
    case 'number':
      return Number(node.text);
    case 'minus':
      return -evaluate(node.of, numberOf);
    case 'binary':
      return OPERATIONS[node.op](evaluate(node.left, numberOf), evaluate(node.right, numberOf));
    case 'call': {
      const known = FUNCTIONS[node.name];
      if (!known) throw new ReferenceError(`formula: there is no function ${node.name}`);
      return known(...node.args.map((arg) => evaluate(arg, numberOf)));
    }
    case 'name': {
      const value = node.name === 'pi' ? Math.PI : numberOf(node.name);
      if (value === undefined) throw new ReferenceError(`formula: there is no ${node.name}`);
      return value;
    }
  }
}

const MINUS = '\u2212';
const SIGNS = { '+': '+', '-': MINUS, '*': '×', '/': '÷' } as const;
const RANKS = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 4 } as const;
const POWERS: Readonly<Record<string, string>> = { 2: '²', 3: '³' };
const BRACKETS: Readonly<Record<string, readonly [string, string]>> = {
  ceil: ['⌈', '⌉'],
  floor: ['⌊', '⌋'],
  abs: ['|', '|'],
  round: ['rounded (', ')'],
  min: ['smallest of (', ')'],
  max: ['largest of (', ')'],
  log: ['ln (', ')'],
  log2: ['log₂ (', ')'],
  exp: ['e^(', ')'],
  sqrt: ['√(', ')'],
  asin: ['arcsin (', ')'],
  acos: ['arccos (', ')'],
  atan: ['arctan (', ')'],
  atan2: ['arctan2 (', ')'],
};

/** How strongly the parts of a formula hold together: a sum least, a single thing most. */
function rankOf(node: Node): number {
  if (node.kind === 'binary') return RANKS[node.op];
  return node.kind === 'minus' ? 3 : 5;
}

/**
 * Writes a formula for people: × ÷ − ² √ ⌈ ⌉.
 * @param show - what stands for a name: its words, or its number with unit
 */
export function written(node: Node, show: (name: string) => string): string {
  const within = (part: Node, least: number): string => {
    const text = written(part, show);
    return rankOf(part) < least || (part.kind === 'name' && text.startsWith(MINUS)) ? `(${text})` : text;
  };
  switch (node.kind) {
    case 'number':
      return node.text;
    case 'name':
      return node.name === 'pi' ? 'π' : show(node.name);
    case 'minus':
      return `${MINUS}${within(node.of, 2)}`;
    case 'call': {
      const [open, close] = BRACKETS[node.name] ?? [`${node.name} (`, ')'];
      return `${open}${node.args.map((arg) => written(arg, show)).join(', ')}${close}`;
    }
    case 'binary':
      return node.op === '^' ? powerText(node.left, node.right, show) : writtenBinary(node.op, node, within);
  }
}

function writtenBinary(
  op: keyof typeof SIGNS,
  { left, right }: { left: Node; right: Node },
  within: (part: Node, least: number) => string,
): string {
  const rank = RANKS[op];
  // What is taken away or divided by holds together.
  const after = op === '-' || op === '/' ? rank + 1 : rank;
  return `${within(left, rank)} ${SIGNS[op]} ${within(right, after)}`;
}

function powerText(base: Node, exponent: Node, show: (name: string) => string): string {
  const text = written(base, show);
  const bracketed = base.kind === 'call' && /^[√|⌈⌊]/.test(text);
  const whole = bracketed || (base.kind !== 'call' && rankOf(base) === 5 && !/[\s\u00A0\u2212]/.test(text));
  const held = whole ? text : `(${text})`;
  const raised = exponent.kind === 'number' ? POWERS[exponent.text] : undefined;
  const by = written(exponent, show);
  return `${held}${raised ?? `^${rankOf(exponent) === 5 && !/\s/.test(by) ? by : `(${by})`}`}`;
}
