export { type PlanPose, planPose } from './pose.js';
export {
  changeHow,
  columnsRound,
  type PlanScene,
  sceneOf,
  type WindowOptions,
} from './window.js';
