create trigger phrasebook_versions_immutable before update or delete on phrasebook_versions
    for each row execute function program_refuse_change();
