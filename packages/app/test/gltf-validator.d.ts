/** What is used of the Khronos Group's validator, which brings no types. */
declare module 'gltf-validator' {
  interface Report {
    readonly mimeType: string;
    readonly issues: { readonly messages: readonly object[] };
    readonly info: {
      readonly totalTriangleCount: number;
      readonly materialCount: number;
    };
  }

  const validator: { validateBytes(bytes: Uint8Array): Promise<Report> };
  export default validator;
}
