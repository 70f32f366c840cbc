/**
 * Works out a spelled-out expression. The mathjs parser makes the tree; the tree is walked here and nowhere evaluated,
 * so that only the four operations, brackets, numbers and the units of `units.ts` can ever have an effect.
 */
import {
  type ConstantNode,
  create,
  type MathNode,
  type OperatorNode,
  type ParenthesisNode,
  parseDependencies,
  type SymbolNode,
} from 'mathjs/number';
import { NotUnderstood } from './not-understood';
import { type Dimension, UNITS, type UnitSymbol } from './units';

const { parse } = create({ ...parseDependencies });

/** A figure in mm, degrees or, with `none`, without a unit yet. */
export interface Figure {
  value: number;
  dimension: Dimension | 'none';
}

/** What a number without a unit stands for when a length or an angle is wanted; `size` in mm or degrees. */
export interface BareUnit {
  dimension: Dimension | 'none';
  size: number;
}

function isUnit(name: string): name is UnitSymbol {
  return Object.hasOwn(UNITS, name);
}

function walk(node: MathNode, bare: BareUnit): Figure {
  switch (node.type) {
    case 'ConstantNode': {
      const { value } = node as ConstantNode;
      if (typeof value !== 'number') break;
      return { value, dimension: 'none' };
    }
    case 'ParenthesisNode':
      return walk((node as ParenthesisNode).content, bare);
    case 'SymbolNode': {
      const { name } = node as SymbolNode;
      if (!isUnit(name)) break;
      return { value: UNITS[name].size, dimension: UNITS[name].dimension };
    }
    case 'OperatorNode':
      return operate(node as OperatorNode, bare);
  }
  throw new NotUnderstood(`"${node.toString()}" cannot be used here. Use numbers, units, + - * / and brackets.`);
}

function operate(node: OperatorNode, bare: BareUnit): Figure {
  const parts = node.args.map((part) => walk(part, bare));
  const [left, right] = parts;
  if (left !== undefined && right === undefined) {
    if (node.fn === 'unaryMinus') return { value: -left.value, dimension: left.dimension };
    if (node.fn === 'unaryPlus') return left;
  }
  if (left !== undefined && right !== undefined && parts.length === 2) {
    switch (node.fn as string) {
      case 'add':
        return sum(left, right, bare);
      case 'subtract':
        return sum(left, { value: -right.value, dimension: right.dimension }, bare);
      case 'multiply':
        return product(left, right);
      case 'divide':
        return quotient(left, right);
    }
  }
  throw new NotUnderstood(`"${node.op}" cannot be used here. Use + - * / and brackets.`);
}

/** Gives a bare number the unit the field shows, so that "100 + 1/16 in" adds to the 100 that stood there. */
export function inBareUnit(figure: Figure, bare: BareUnit): Figure {
  return figure.dimension === 'none' ? { value: figure.value * bare.size, dimension: bare.dimension } : figure;
}

function sum(left: Figure, right: Figure, bare: BareUnit): Figure {
  if (left.dimension === right.dimension) return { value: left.value + right.value, dimension: left.dimension };
  const a = inBareUnit(left, bare);
  const b = inBareUnit(right, bare);
  if (a.dimension !== b.dimension) {
    throw new NotUnderstood(
      bare.dimension === 'none'
        ? 'This takes a plain number. Leave the unit out.'
        : 'A length and an angle cannot be added. Give every part in the same kind of unit.',
    );
  }
  return { value: a.value + b.value, dimension: a.dimension };
}

function product(left: Figure, right: Figure): Figure {
  if (left.dimension !== 'none' && right.dimension !== 'none') {
    throw new NotUnderstood('Two figures with units cannot be multiplied. Leave the unit of one of them out.');
  }
  return {
    value: left.value * right.value,
    dimension: left.dimension === 'none' ? right.dimension : left.dimension,
  };
}

function quotient(left: Figure, right: Figure): Figure {
  if (right.dimension !== 'none') {
    throw new NotUnderstood('A figure cannot be divided by one with a unit. Leave the unit of the divisor out.');
  }
  if (right.value === 0) throw new NotUnderstood('This divides by 0. Divide by something else.');
  return { value: left.value / right.value, dimension: left.dimension };
}

/** The value of a spelled-out expression. Throws `NotUnderstood` with a sentence. */
export function evaluateExpression(expression: string, bare: BareUnit): Figure {
  let tree: MathNode;
  try {
    tree = parse(expression);
  } catch {
    throw new NotUnderstood('This is not finished. A figure or a bracket is missing.');
  }
  return walk(tree, bare);
}
