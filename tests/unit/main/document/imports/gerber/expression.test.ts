import { expect, test } from 'vitest';
import { evaluateExpression } from '../../../../../../main/document/imports/gerber/expression.ts';

const variables = new Map([
  [1, 3],
  [2, 0.5],
]);

// Operators and their order: The Gerber Layer Format Specification 2023.03, section 4.5.4.2.
test.each([
  ['1+2x3', 7],
  ['(1+2)x3', 9],
  ['$1+$1', 6],
  ['$1x$2-1', 0.5],
  ['-$1+10', 7],
  ['8/4/2', 1],
  ['5-3-1', 1],
  ['1.5X2', 3],
  ['$7', 0],
  ['-(2+1)', -3],
  ['.5', 0.5],
])('%s is %d', (text, value) => {
  expect(evaluateExpression(text, variables)).toBeCloseTo(value, 12);
});

test.each(['', '1+', '(1', '1)', 'abc', '1 2 +', '$', '--'])('%j is no expression', (text) => {
  expect(evaluateExpression(text, variables)).toBeNaN();
});

test('brackets nested without end stop at a depth', () => {
  expect(evaluateExpression('('.repeat(5000), variables)).toBeNaN();
});
