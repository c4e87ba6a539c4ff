import { parse } from '@babel/parser';

/** One small change of a program: what stands between `start` and `end` is replaced. */
export interface Mutant {
  readonly file: string;
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly from: string;
  readonly to: string;
  readonly kind: 'operator' | 'sign' | 'constant' | 'branch' | 'code';
  /** The body of the function around it; what runs as the file is read in has none. */
  readonly within: Body | undefined;
}

export interface Body {
  readonly start: number;
  readonly end: number;
  /** Of braces, or an arrow's one expression. */
  readonly block: boolean;
}

/** Another operator of the same types; where there are two, both are tried. */
const OPERATORS: Readonly<Record<string, readonly string[]>> = {
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '%': ['*'],
  '<': ['<=', '>'],
  '<=': ['<', '>'],
  '>': ['>=', '<'],
  '>=': ['>', '<'],
  '===': ['!=='],
  '!==': ['==='],
  '&&': ['||'],
  '||': ['&&'],
  '??': ['&&'],
  '+=': ['-='],
  '-=': ['+='],
};

const FUNCTIONS: Readonly<Record<string, string>> = {
  min: 'max',
  max: 'min',
  sin: 'cos',
  cos: 'sin',
  floor: 'ceil',
  ceil: 'floor',
};

/** What makes a problem, its code first. */
const TELLS = /^(?:error|warning|refuse|refused|wrong|problem|add|stop|unfit|told|Unreadable)$/;
const CODE = /^[a-z0-9]+(?:-[a-z0-9]+)+$/;

/** What types alone say cannot be wrong at run time. */
const TYPES = /^(?:TS|Import|ExportAll)/;

const FUNCTION = /^(?:Function|ArrowFunction|ObjectMethod|ClassMethod|ClassPrivateMethod)/;

const bodyOf = ({ start, end, type }: Node): Body => ({ start, end, block: type === 'BlockStatement' });

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as { readonly type?: unknown }).type === 'string';

/** Every place of a file where one operator, sign, constant or branch can be changed. */
export function mutantsOf(file: string, text: string): readonly Mutant[] {
  const { program } = parse(text, { sourceType: 'module', plugins: ['typescript'] });
  const found: Mutant[] = [];
  let within: Body | undefined;
  const lineAt = (index: number): number => text.slice(0, index).split('\n').length;
  const add = (kind: Mutant['kind'], start: number, end: number, to: string): void => {
    found.push({ file, line: lineAt(start), start, end, from: text.slice(start, end), to, kind, within });
  };
  const between = (left: Node, right: Node, operator: string): void => {
    const start = text.indexOf(operator, left.end);
    if (start < 0 || start > right.start) return;
    for (const other of OPERATORS[operator] ?? []) add('operator', start, start + operator.length, other);
  };
  const visit = (node: Node): void => {
    if (
      TYPES.test(node.type) &&
      node.type !== 'TSAsExpression' &&
      node.type !== 'TSNonNullExpression' &&
      node.type !== 'TSSatisfiesExpression'
    )
      return;
    mutate(node);
    const outer = within;
    // What stands in a parameter's default counts as the body's: it runs with it.
    if (isNode(node.body) && FUNCTION.test(node.type)) within = bodyOf(node.body);
    for (const [key, value] of Object.entries(node)) {
      if (key === 'typeAnnotation' || key === 'typeParameters' || key === 'returnType') continue;
      for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) visit(child);
    }
    within = outer;
  };
  const mutate = (node: Node): void => {
    switch (node.type) {
      case 'BinaryExpression':
      case 'LogicalExpression':
        // Words put together are no arithmetic.
        if (
          !(
            node.operator === '+' &&
            [node.left, node.right].some((each) => isNode(each) && /String|Template/.test(each.type))
          )
        )
          between(node.left as Node, node.right as Node, node.operator as string);
        return;
      case 'AssignmentExpression':
        between(node.left as Node, node.right as Node, node.operator as string);
        return;
      case 'UnaryExpression':
        if (node.operator === '-' || node.operator === '!')
          add(node.operator === '-' ? 'sign' : 'branch', node.start, (node.argument as Node).start, '');
        return;
      case 'NumericLiteral': {
        const value = node.value as number;
        add(
          'constant',
          node.start,
          node.end,
          String(value === 0 ? 1 : Number.isInteger(value) ? value + 1 : value * 1.1),
        );
        return;
      }
      case 'BooleanLiteral':
        add('constant', node.start, node.end, String(node.value !== true));
        return;
      case 'IfStatement':
      case 'ConditionalExpression': {
        const { start, end } = node.test as Node;
        add('branch', start, end, `!(${text.slice(start, end)})`);
        return;
      }
      case 'CallExpression': {
        const [callee, [first]] = [node.callee as Node, node.arguments as readonly Node[]];
        const code = first?.type === 'StringLiteral' ? String(first.value) : '';
        if (callee.type === 'Identifier' && TELLS.test(String(callee.name)) && CODE.test(code))
          add('code', first!.start, first!.end, `'${code}-other'`);
        return;
      }
      case 'MemberExpression': {
        const [object, property] = [node.object as Node, node.property as Node];
        const other =
          object.type === 'Identifier' && object.name === 'Math' ? FUNCTIONS[String(property.name)] : undefined;
        if (other !== undefined) add('operator', property.start, property.end, other);
        return;
      }
      default:
        return;
    }
  };
  for (const statement of program.body) if (isNode(statement)) visit(statement);
  return found;
}
