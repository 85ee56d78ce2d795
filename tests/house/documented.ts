/** Which functions a door lets out without saying what they take and give. Read with the TypeScript compiler. */
import { readFileSync } from 'node:fs';
import ts from 'typescript';

/** A unit at the end of a name, or one of these words in the comment, tells a reader what a number is. */
const UNIT_NAME = /_(Pa|L_s|m3_s|m3|m2|m|mm|mm2|C|K|W|Wh|kWh|kg|g|g_m3|g_min|min|s|h|rpm|deg|m_s|dB|a)$/;
const UNIT_WORD =
  /\b(Pa|L\/s|m3\/s|m3|m2|m|mm|degC|°C|K|W|kWh|Wh|J|kg|g|min|minutes?|seconds?|s|h|hours?|rpm|deg|degrees|dB|share|shares|ratio|factor|0 to 1|percent|%|standard errors?|dimensionless|unit|units|count|number of|index|seed|scale|coefficient)\b/;

export interface Finding {
  readonly name: string;
  readonly lacks: 'a comment' | 'a unit';
}

const takesNumber = (checker: ts.TypeChecker, type: ts.Type) =>
  (checker.getNonNullableType(type).flags & ts.TypeFlags.NumberLike) !== 0;

/** Findings of one door; `units` asks for a unit wherever a function itself takes or gives a bare number. */
export function undocumented(door: string, units: boolean, text?: string): Finding[] {
  const options: ts.CompilerOptions = {
    target: ts.ScriptTarget.ESNext,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    allowImportingTsExtensions: true,
    resolveJsonModule: true,
    strict: true,
    noEmit: true,
    skipLibCheck: true,
    types: [],
  };
  const host = ts.createCompilerHost(options);
  const read = host.readFile.bind(host);
  const exists = host.fileExists.bind(host);
  host.readFile = (file) => (text !== undefined && file === door ? text : read(file));
  host.fileExists = (file) => (text !== undefined && file === door) || exists(file);
  const get = host.getSourceFile.bind(host);
  host.getSourceFile = (file, version) =>
    text !== undefined && file === door ? ts.createSourceFile(file, text, version) : get(file, version);
  const program = ts.createProgram([door], options, host);
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(door);
  const module = source && checker.getSymbolAtLocation(source);
  if (!module) throw new Error(`${door}: not a module (${readFileSync(door).length} bytes)`);
  return checker.getExportsOfModule(module).flatMap((exported): Finding[] => {
    const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
    const declaration = symbol.valueDeclaration;
    if (!declaration || ts.isClassDeclaration(declaration)) return [];
    const [signature] = checker.getTypeOfSymbolAtLocation(symbol, declaration).getCallSignatures();
    if (!signature) return [];
    const comment = ts.displayPartsToString(symbol.getDocumentationComment(checker));
    if (comment.trim() === '') return [{ name: exported.name, lacks: 'a comment' }];
    if (!units) return [];
    const numbers = signature
      .getParameters()
      .filter((each) => takesNumber(checker, checker.getTypeOfSymbolAtLocation(each, declaration)))
      .map(({ name }) => name);
    if (takesNumber(checker, signature.getReturnType())) numbers.push(exported.name);
    const bare = numbers.filter((name) => !UNIT_NAME.test(name));
    return bare.length && !UNIT_WORD.test(comment) ? [{ name: exported.name, lacks: 'a unit' }] : [];
  });
}
