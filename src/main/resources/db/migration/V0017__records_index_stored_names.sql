-- The sweep of the scan store asks which names are in use.

create index scan_files_by_content on scan_files (content_hash);
create index sheets_by_page_picture on sheets (page_picture);
create index sheets_by_screen_picture on sheets (screen_picture);
create index sheet_first_readings_by_page_picture on sheet_first_readings (page_picture);
create index sheet_first_readings_by_screen_picture on sheet_first_readings (screen_picture);
