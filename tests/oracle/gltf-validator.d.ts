declare module 'gltf-validator' {
  export function validateBytes(bytes: Uint8Array): Promise<{
    readonly issues: {
      readonly numErrors: number;
      readonly numWarnings: number;
      readonly numInfos: number;
      readonly messages: readonly {
        readonly code: string;
        readonly message: string;
        readonly pointer: string;
      }[];
    };
    readonly info: { readonly totalTriangleCount: number; readonly materialCount: number };
  }>;
}
