// Files as companies send them, invented, each with damage of its own.
const wide = (text: string) => Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(text, "utf16le")]);

export const nasty = {
  headers: [
    "Closed repairs,,,,,",
    "Printed 03/02/2025,,,,,",
    ",Unit,,Dates,,",
    "Job No,Brand,Serial,Called,Done,Labour",
    "J-1,Hearth-Wick,HW100001,2024-05-01,2024-05-02,45.00",
    "J-2,Hearth-Wick,HW100002,2024-05-03,2024-05-04,55.00",
    "Job No,Brand,Serial,Called,Done,Labour",
    "J-3,Brightwell,BW200003,2024-05-05,2024-05-06,65.00",
  ].join("\r\n"),
  totals: [
    "Job No,Brand,Serial,Done,Trip",
    "J-1,Hearth-Wick,HW100001,2024-05-02,45.00",
    "J-2,Hearth-Wick,HW100002,2024-05-04,55.00",
    "Subtotal May,,,,100.00",
    "J-3,Brightwell,BW200003,2024-06-06,65.00",
    "Grand total,,,,165.00",
    "",
    "* Trips are charged as agreed in March.,,,,",
    "Page 1 of 1,,,,",
  ].join("\n"),
  days: [
    "Ticket,Make,Ser. No.,Closed",
    "T1,Hearth-Wick,HW100001,13/02/2024",
    "T2,Hearth-Wick,HW100002,02/13/2024",
    "T3,Hearth-Wick,HW100003,2024-02-13",
    "T4,Hearth-Wick,HW100004,13-Feb-24",
    "T5,Hearth-Wick,HW100005,03/04/2024",
    "T6,Hearth-Wick,HW100006,45341",
    "T7,Hearth-Wick,HW100007,01/01/1900",
    "T8,Hearth-Wick,HW100008,yesterday",
  ].join("\n"),
  semicolons: [
    "Auftrag;Hersteller;Modell;Seriennummer;Erledigt;Teil;Menge;Preis",
    "A-1;Hearth-Wick;FW5500;HW100001;13.02.2024;P-10;1;1.234,50",
    "A-2;Hearth-Wick;FW5500;HW100002;14.02.2024;P-11;2;12,5",
    "A-3;Hearth-Wick;FW5500;HW100003;15.02.2024;P-12;1,5;0,99 €",
  ].join("\r\n"),
  wide: wide(
    "Job No\tBrand\tModel\tSerial\tDone\tComplaint\r\nJ-1\tHearth-Wick\tFW5500\tHW100001\t2024-05-02\tläuft aus ½\r\n",
  ),
  damaged: [
    "Job No,Brand,Serial,Part No,Done",
    "J-1,Hearth-Wick,1.23E+15,5-Jan,2024-05-02",
    "J-2,Hearth-Wick,HW1OOOO2,1E5,2024-05-02",
    "J-3,Hearth-Wick,#N/A,P-1,2024-05-02",
    'J-4,Hearth-Wick,"=""HW100004""",P-2,2024-05-02',
    "J-5,Hearth-Wick,N/A,P-3,2024-05-02",
    "J-6,Hearth-Wick,HW100006,P-4,2024-05-02",
    "J-7,Hearth-Wick,HW100007,P-5,2024-05-02",
  ].join("\n"),
  marks:
    "Job No,Brand,Serial,Done\nJ-1,Hearth-Wick,HW100001,2024-05-02\n\ufeffJ-2,Hearth-Wick,\ufeffHW100002,2024-05-02\nJob No,Brand,Serial,Done\nJ-3,Hearth-Wick,HW10\u0000003,2024-05-02\n",
  quotes:
    'Job No,Brand,Serial,Done,Complaint\nJ-1,Hearth-Wick,HW100001,2024-05-02,"12" hose leaks\nJ-2,Hearth-Wick,HW100002,2024-05-03,fine\nJ-3,Hearth-Wick,HW100003,2024-05-04,"never closed\nJ-4,Hearth-Wick,HW100004,2024-05-05,fine\n',
  long: `Job No,Brand,Serial,Done,Complaint\nJ-1,Hearth-Wick,HW100001,2024-05-02,${"x".repeat(100_000)}\nJ-2,${"y".repeat(100_000)},HW100002,2024-05-02,ok\nJ-${"3".repeat(100_000)},Hearth-Wick,HW100003,2024-05-02,ok\n`,
} satisfies Readonly<Record<string, string | Buffer>>;
