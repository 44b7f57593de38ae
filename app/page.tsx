import { redirect } from "next/navigation";

export default function FirstPage(): never {
  redirect("/today");
}
