export interface Answer {
  readonly status: number;
  readonly when: string;
  readonly todo: string;
}

export const answers: readonly Answer[] = [
  { status: 201, when: "The jobs were added or changed", todo: "Nothing. The answer names the load." },
  { status: 200, when: "Everything was here already", todo: "Nothing." },
  { status: 400, when: "No Idempotency-Key, or no JSON", todo: "Correct the request." },
  { status: 401, when: "No key, or a key that was ended", todo: "Make a key." },
  { status: 409, when: "The same request is still being worked on", todo: "Wait two seconds and send it again." },
  { status: 413, when: "Too many jobs or bytes", todo: "Send several requests, or load a file." },
  { status: 415, when: "The body is not called JSON", todo: "Name its type." },
  {
    status: 422,
    when: "Places need correcting, or the Idempotency-Key came with another body",
    todo: "Correct the places; use a new Idempotency-Key.",
  },
];

export const exampleRequest = `curl http://127.0.0.1:3000/api/jobs \\
  -H "Authorization: Bearer $KEY" \\
  -H "Idempotency-Key: closed-2026-04-15-0107" \\
  -H "Content-Type: application/json" \\
  -d '{
    "jobs": [
      {
        "job_number": "J-20817",
        "maker": "Brackenhall",
        "model": "BHF27-W3",
        "product_type": "front_load_washer",
        "serial": "B25109700001",
        "completed_on": "2026-04-15",
        "complaint": "Will not drain",
        "component": "drain_pump",
        "failure_mode": "winding_open",
        "cause": "component",
        "part_lines": [
          { "part_number": "BH-077", "component": "drain_pump", "quantity": 1, "unit_cost": 41.5 }
        ],
        "readings": [
          { "check": "pump_winding", "mode": "ohm", "outcome": "open", "power": "off", "isolated": true }
        ]
      }
    ]
  }'`;

export const exampleAnswer = `{
  "load": 412,
  "address": "/files/412",
  "rows": { "total": 3, "new": 3, "changed": 0, "same": 0 }
}`;

export const exampleProblem = `{
  "type": "/files/sending#problems",
  "title": "Some places need correcting",
  "status": 422,
  "detail": "Nothing was added: 1 place needs correcting. Correct it and send the whole again with a new Idempotency-Key.",
  "problems": [
    {
      "pointer": "/jobs/0/part_lines/0/quantity",
      "value": "-2",
      "problem": "is negative",
      "fix": "Write a whole number, 1 or more."
    }
  ]
}`;
