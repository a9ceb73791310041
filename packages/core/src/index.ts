export * from './chart/chart.js';
export { checkChart } from './chart/check-chart.js';
export { nameColours } from './chart/colour-names.js';
export { printChartDocument, readChartDocument } from './chart/json.js';
export { GIVEN_KEYS } from './chart/legend.js';
export { readPngChart } from './chart/png.js';
export * from './chart/read.js';
export { printTextChart, readTextChart } from './chart/text.js';
export * from './diagnose/diagnose.js';
export * from './diagnose/diagnosis.js';
export { readSeen, seenOfChart } from './diagnose/read-seen.js';
export { diagnosisText } from './diagnose/text.js';
export { MISTAKE_WEIGHTS } from './diagnose/weights.js';
export { MistakeWords } from './diagnose/words.js';
export * from './diagonal/index.js';
export * from './diagonal-mistakes/index.js';
export * from './diagonal-picture/index.js';
export * from './diagonal-words/index.js';
export { checkHeader, unknownProperty } from './document/header.js';
export { JsonText, type Properties } from './document/json.js';
export { FILE_LIMITS } from './document/limits.js';
export { decodeUtf8 } from './document/utf8.js';
export * from './ease/index.js';
export * from './errors.js';
export { instructionsHtml } from './instructions/html.js';
export { instructRow } from './instructions/instruct-row.js';
export { closingSection, openingSections, type Section } from './instructions/opening.js';
export type {
  InstructionPart,
  PartKind,
  RowInstructions,
} from './instructions/parts.js';
export { planStepInWords, stepInWords } from './instructions/step-words.js';
export { changesInWords, findingInWords, summaryInWords } from './instructions/summary.js';
export { instructionsText } from './instructions/text.js';
export { colourInWords, leadInWords } from './instructions/wording.js';
export {
  type MistakenOptions,
  type MistakenPiece,
  makeMistakes,
} from './mistakes/make-mistakes.js';
export * from './mistakes/mistake.js';
export { type OrderRange, possibleMistakes } from './mistakes/possible.js';
export * from './mistakes/seen.js';
export { Written } from './mistakes/written.js';
export * from './model/apply.js';
export { Cursor } from './model/cursor.js';
export type { FaultCode, StepFault } from './model/fault.js';
export * from './model/knot.js';
export * from './model/state.js';
export * from './model/step.js';
export { StepList, StepListBuilder } from './model/steplist.js';
export * from './model/strings.js';
export { drawFabric, type FabricOptions, fabricPieces } from './picture/draw-fabric.js';
export { type FabricGeometry, fabricGeometry } from './picture/fabric-geometry.js';
export { MAX_KNOTS_DRAWN } from './picture/size.js';
export * from './plan/changes.js';
export { checkPlanSteps } from './plan/check-plan.js';
export { PLAN_LIMITS, type PlanLimits } from './plan/format.js';
export { readPlan } from './plan/parse.js';
export * from './plan/plan.js';
export { type Join, type PlanOptions, planAlpha } from './plan/planner.js';
export { printPlan } from './plan/print.js';
export * from './plan/reading.js';
export { type TurnWay, turnAt } from './plan/turn-way.js';
export { printable } from './printable.js';
export { printDiagonalTrace } from './trace/print-diagonal-trace.js';
export { printTrace } from './trace/print-trace.js';
export * from './verify/findings.js';
export * from './verify/verification.js';
export { LONG_FLOAT, type VerifyOptions, verifyPlan } from './verify/verify.js';
