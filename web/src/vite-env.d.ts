declare module "*.css";
declare module "@fontsource/b612/*";
declare module "*.toml?raw" {
  const text: string;
  export default text;
}
