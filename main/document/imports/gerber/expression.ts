/**
 * Arithmetic of aperture macros: + - x / with the usual precedence, unary signs, brackets, `$n` variables
 * (Gerber format specification, section 4.5.4). Undefined variables are 0. Returns NaN for text that is no expression.
 */
export function evaluateExpression(text: string, variables: ReadonlyMap<number, number>): number {
  const reader = { text: text.replace(/\s+/g, ''), at: 0, variables, depth: 0 };
  const value = sum(reader);
  return reader.at === reader.text.length ? value : Number.NaN;
}

interface Reader {
  readonly text: string;
  at: number;
  depth: number;
  readonly variables: ReadonlyMap<number, number>;
}

const MAX_DEPTH = 64;

function sum(reader: Reader): number {
  let value = product(reader);
  for (;;) {
    const operator = reader.text[reader.at];
    if (operator !== '+' && operator !== '-') return value;
    reader.at++;
    const right = product(reader);
    value = operator === '+' ? value + right : value - right;
  }
}

function product(reader: Reader): number {
  let value = factor(reader);
  for (;;) {
    const operator = reader.text[reader.at];
    if (operator !== 'x' && operator !== 'X' && operator !== '/') return value;
    reader.at++;
    const right = factor(reader);
    value = operator === '/' ? value / right : value * right;
  }
}

function factor(reader: Reader): number {
  const { text } = reader;
  const head = text[reader.at];
  if (++reader.depth > MAX_DEPTH) return Number.NaN;
  try {
    if (head === '-' || head === '+') {
      reader.at++;
      return head === '-' ? -factor(reader) : factor(reader);
    }
    if (head === '(') {
      reader.at++;
      const value = sum(reader);
      if (text[reader.at] !== ')') return Number.NaN;
      reader.at++;
      return value;
    }
    return leaf(reader);
  } finally {
    reader.depth--;
  }
}

function leaf(reader: Reader): number {
  const variable = /^\$(\d+)/.exec(reader.text.slice(reader.at, reader.at + 12));
  if (variable) {
    reader.at += variable[0].length;
    return reader.variables.get(Number(variable[1])) ?? 0;
  }
  const number = /^(?:\d+\.?\d*|\.\d+)/.exec(reader.text.slice(reader.at, reader.at + 40));
  if (!number) return Number.NaN;
  reader.at += number[0].length;
  return Number(number[0]);
}
