DROP TABLE "file_draft_pieces" CASCADE;--> statement-breakpoint
ALTER TABLE "file_drafts" DROP COLUMN "checked";