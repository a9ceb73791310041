export * from './findings.js';
export { type DiagonalVerifyOptions, verifyDiagonal } from './verify.js';
