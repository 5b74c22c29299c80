import ts from 'typescript';

/** Attributes whose text people see or hear. */
const spokenAttributes = new Set([
  'aria-label',
  'aria-description',
  'aria-placeholder',
  'aria-roledescription',
  'aria-valuetext',
  'alt',
  'description',
  'error',
  'label',
  'placeholder',
  'title',
]);

/**
 * Words that stand in the markup of a component: text between tags, strings inside braces there, and
 * strings of attributes that people see or hear. Each with its line.
 */
export function visibleEnglish(fileName: string, source: string): string[] {
  const file = ts.createSourceFile(fileName, source, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX);
  const found: string[] = [];
  const note = (node: ts.Node, text: string) => {
    if (!/\p{L}/u.test(text)) return;
    const { line } = file.getLineAndCharacterOfPosition(node.getStart(file));
    found.push(`${fileName}:${line + 1}: ${text.trim()}`);
  };

  function visit(node: ts.Node): void {
    if (ts.isJsxText(node)) note(node, node.text);
    else if (ts.isJsxAttribute(node)) {
      const spoken = spokenAttributes.has(node.name.getText(file));
      if (node.initializer !== undefined) (spoken ? strings : visit)(node.initializer);
    } else if (ts.isJsxExpression(node) && (ts.isJsxElement(node.parent) || ts.isJsxFragment(node.parent)))
      strings(node);
    else ts.forEachChild(node, visit);
  }

  /** Everything that an expression may turn out to be; what it compares or calls is no text. */
  function strings(node: ts.Node): void {
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node))
      note(node, node.text);
    else if (ts.isConditionalExpression(node)) [node.whenTrue, node.whenFalse].forEach(strings);
    else if (ts.isBinaryExpression(node)) operands(node).forEach(strings);
    else if (ts.isTemplateSpan(node)) [node.expression, node.literal].forEach(strings);
    else if (ts.isJsxExpression(node) || ts.isParenthesizedExpression(node) || ts.isTemplateExpression(node))
      ts.forEachChild(node, strings);
    else visit(node);
  }

  visit(file);
  return found;
}

/** Which sides of an operator may be what is shown. */
function operands({ left, right, operatorToken }: ts.BinaryExpression): ts.Expression[] {
  switch (operatorToken.kind) {
    case ts.SyntaxKind.PlusToken:
    case ts.SyntaxKind.BarBarToken:
    case ts.SyntaxKind.QuestionQuestionToken:
      return [left, right];
    case ts.SyntaxKind.AmpersandAmpersandToken:
      return [right];
    default:
      return [];
  }
}
