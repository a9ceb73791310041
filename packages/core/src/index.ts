export * from './errors.js';
export * from './model/knot.js';
export * from './model/strings.js';
export * from './model/step.js';
export { StepList, StepListBuilder } from './model/steplist.js';
export * from './model/state.js';
export { type FaultCode, type StepFault } from './model/fault.js';
export * from './model/apply.js';
export { Cursor } from './model/cursor.js';
export * from './chart/chart.js';
export * from './plan/plan.js';
export * from './plan/changes.js';
export { type Join, type PlanOptions, planAlpha } from './plan/planner.js';
export * from './plan/reading.js';
export * from './verify/findings.js';
export * from './verify/verification.js';
export { LONG_FLOAT, type VerifyOptions, verifyPlan } from './verify/verify.js';
export {
  type InstructionPart,
  type PartKind,
  type RowInstructions,
} from './instructions/parts.js';
export { instructRow } from './instructions/instruct-row.js';
export { planStepInWords, stepInWords } from './instructions/step-words.js';
export { type Section, closingSection, openingSections } from './instructions/opening.js';
export { changesInWords, findingInWords, summaryInWords } from './instructions/summary.js';
export { printTrace } from './trace/print-trace.js';
export { colourInWords, leadInWords, printable } from './instructions/wording.js';
export { instructionsText } from './instructions/text.js';
export { instructionsHtml } from './instructions/html.js';
export {
  type FabricOptions,
  MAX_KNOTS_DRAWN,
  drawFabric,
  fabricPieces,
} from './picture/draw-fabric.js';
export { type FabricGeometry, fabricGeometry } from './picture/fabric-geometry.js';
export * from './chart/read.js';
export { printTextChart, readTextChart } from './chart/text.js';
export { readPngChart } from './chart/png.js';
export { printChartDocument, readChartDocument } from './chart/json.js';
export { printPlan } from './plan/print.js';
export { readPlan } from './plan/parse.js';
export { PLAN_LIMITS, type PlanLimits } from './plan/format.js';
export { FILE_LIMITS } from './document/limits.js';
export { decodeUtf8 } from './document/utf8.js';
