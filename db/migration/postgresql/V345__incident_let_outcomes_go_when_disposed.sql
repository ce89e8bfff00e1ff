-- words may be taken out at the end of their time: only while the same transaction holds the line that says so
create function incident_is_written_down(incident uuid, what varchar) returns boolean language sql volatile as $$
    select exists (
        select 1 from retention_items i
        where i.record_id = incident and i.kind = what and i.state = 'DONE' and i.transaction_mark = transaction_id())
$$;

create function incident_refuse_unless_words_out() returns trigger language plpgsql as $$
begin
    if tg_op = 'UPDATE' then
        if to_jsonb(new) - array[tg_argv[1], 'words_out_at'] = to_jsonb(old) - array[tg_argv[1], 'words_out_at']
            and old.words_out_at is null and new.words_out_at is not null
            and incident_is_written_down(old.incident_id, tg_argv[0]) then
            return new;
        end if;
    end if;
    raise exception 'rows of % are never changed but by a disposal that is written down, and never deleted', tg_table_name
        using errcode = '23514';
end $$;

drop trigger incident_restarts_immutable on incident_restarts;

create trigger incident_restarts_words_out_only before update or delete on incident_restarts
    for each row execute function incident_refuse_unless_words_out('RESTARTS', 'words');

drop trigger incident_risk_reviews_immutable on incident_risk_reviews;

create trigger incident_risk_reviews_words_out_only before update or delete on incident_risk_reviews
    for each row execute function incident_refuse_unless_words_out('RISK_REVIEWS', 'outcome');

-- the steps say the same words once more: each goes with the story, or with what it tells of
create or replace function incident_refuse_unless_reworded() returns trigger language plpgsql as $$
begin
    if tg_op = 'UPDATE' then
        if new.id = old.id and new.incident_id = old.incident_id and new.kind = old.kind and new.taken_at = old.taken_at
            and (incident_is_written_down(old.incident_id, 'INCIDENTS')
                or old.kind = 'CLOSED' and incident_is_written_down(old.incident_id, 'CLOSINGS')
                or old.kind = 'RESTART_APPROVED' and incident_is_written_down(old.incident_id, 'RESTARTS')
                or old.kind = 'RISK_ASSESSMENT' and incident_is_written_down(old.incident_id, 'RISK_REVIEWS')) then
            return new;
        end if;
    end if;
    raise exception 'rows of % are never changed but by a disposal that is written down, and never deleted', tg_table_name
        using errcode = '23514';
end $$;
